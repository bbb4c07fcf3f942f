// Asks the browser to keep the site for reading without a network, once the page itself has been loaded; not where the reader saves data.
export function keepOffline(root: string): void {
  const network = (navigator as { readonly connection?: { readonly saveData?: boolean } }).connection;
  if (!("serviceWorker" in navigator) || !location.protocol.startsWith("http") || network?.saveData) return;
  const keep = () => {
    navigator.serviceWorker.register(`${root}offline.js`).catch(() => {
      // Private windows and some settings forbid it; the site works all the same while there is a network.
    });
  };
  if (document.readyState === "complete") keep();
  else addEventListener("load", keep, { once: true });
}
