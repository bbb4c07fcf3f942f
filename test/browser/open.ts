// A browser on the built site, with an ear for what must never happen: an error on the console, a page that fails, a request to another host.
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { ensureChromium, launchArguments } from "../support/chromium.mjs";

export function startBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: ensureChromium(), args: [...launchArguments] });
}

export interface Opened {
  readonly context: BrowserContext;
  readonly page: Page;
  /** What went wrong so far, each in one line; a test ends by expecting none. */
  readonly wrong: string[];
}

/** What Playwright itself writes on the console of a page that may not register its service worker. */
const blocked = "Service Worker registration blocked by Playwright";

/**
 * A fresh visitor. `home` is the only place requests may go to. The copy for reading without a network is not made unless the test asks
 * for it with `serviceWorkers: "allow"`: packing away the whole site beside every test costs more than the tests.
 */
export async function visit(browser: Browser, home: string, options: BrowserContextOptions = {}): Promise<Opened> {
  const context = await browser.newContext({
    viewport: { width: 360, height: 740 },
    reducedMotion: "reduce",
    serviceWorkers: "block",
    ...options,
  });
  // What is waited for comes or never does; how busy the machine is must not decide it.
  context.setDefaultTimeout(600_000);
  const page = await context.newPage();
  const wrong: string[] = [];
  page.on("console", (message) => {
    if (message.text() === blocked) return;
    if (message.type() === "error" || message.type() === "warning") wrong.push(`${message.type()}: ${message.text()}`);
  });
  page.on("pageerror", (problem) => wrong.push(`page: ${problem.message}`));
  context.on("request", (request) => {
    const address = request.url();
    if (!address.startsWith(home) && !/^(?:data|blob):/.test(address)) wrong.push(`request to ${address}`);
  });
  return { context, page, wrong };
}

/** Waits until the planner has answered the build as it stands and counted all there is to count. */
export async function answered(page: Page): Promise<void> {
  await replied(page);
  await page.locator("#answer .now[data-counted]").waitFor();
}

/** Waits until it has answered; it may be counting on. */
export async function replied(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const told = document.querySelector("#answer .now")?.getAttribute("data-answered");
    if (!told || document.querySelector("#planner[data-due]")) return false;
    // The address is there at once, the answer a little later; a build opened from a question after "?" has no address yet.
    const asked = location.hash.slice(1);
    return asked === "" || /^planner\.html\?(?:card|board|build)=/.test(asked) || decodeURI(asked).endsWith(decodeURI(told));
  });
}

/** Adds a card by typing and choosing with the keyboard. */
export async function addCard(page: Page, typed: string): Promise<void> {
  const box = page.getByRole("combobox", { name: "Add a card" });
  await box.fill(typed);
  await box.press("ArrowDown");
  await box.press("Enter");
  await answered(page);
}
