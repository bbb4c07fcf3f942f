// Runs before anything is drawn: says that scripts run, so that what needs them takes its place at once, and asks for the type faces early.
// From a disk the faces come with the style sheet; asking early there is refused.
document.documentElement.classList.add("js");
if (location.protocol !== "file:") {
  const { src } = document.currentScript as HTMLScriptElement;
  for (const face of ["text-400", "text-700"]) {
    const link = document.createElement("link");
    link.rel = "preload";
    link.as = "font";
    link.type = "font/woff2";
    link.crossOrigin = "anonymous";
    link.href = new URL(`fonts/${face}.woff2`, src).href;
    document.head.append(link);
  }
}
