// On paper a page says when it was printed and where it stands; on a screen the browser does.

export function sayPrinted(): void {
  const at = document.querySelector("[data-printed]");
  if (!at) return;
  const say = () => {
    const today = new Date();
    const day = [today.getFullYear(), today.getMonth() + 1, today.getDate()].map((n) => String(n).padStart(2, "0")).join("-");
    at.textContent = `Printed ${day} from ${location.href.replace(/#.*$/, "")}`;
  };
  say();
  addEventListener("beforeprint", say);
}
