// Chromium without a window, driven over a pipe by its DevTools protocol: no library in between.
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const names = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

export function findChromium() {
  return names.find((name) => existsSync(name));
}

export class Browser {
  #process;
  #waiting = new Map();
  #listeners = new Map();
  #number = 0;
  #rest = "";
  #profile = mkdtempSync(join(tmpdir(), "sudsmark-browser-"));

  /** `environment`: variables beside those of this process. */
  constructor(path, environment = {}) {
    const flags = [
      "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
      "--disable-background-networking", "--disable-component-update", "--disable-sync",
      "--disable-extensions", "--disable-dev-shm-usage", "--hide-scrollbars",
      "--font-render-hinting=none", "--remote-debugging-pipe", `--user-data-dir=${this.#profile}`,
    ];
    this.#process = spawn(path, flags, { env: { ...process.env, ...environment }, stdio: ["ignore", "ignore", "ignore", "pipe", "pipe"] });
    this.#process.stdio[4].on("data", (bytes) => this.#take(bytes.toString("utf8")));
    this.#process.on("exit", () => {
      for (const { reject } of this.#waiting.values()) reject(new Error("the browser has gone"));
    });
  }

  #take(text) {
    const parts = (this.#rest + text).split("\0");
    this.#rest = parts.pop();
    for (const part of parts) {
      const message = JSON.parse(part);
      if (message.id !== undefined) {
        const { resolve, reject } = this.#waiting.get(message.id);
        this.#waiting.delete(message.id);
        if (message.error) reject(new Error(message.error.message));
        else resolve(message.result);
      } else {
        this.#listeners.get(message.sessionId)?.(message.method, message.params);
      }
    }
  }

  send(method, params = {}, sessionId = undefined) {
    const id = ++this.#number;
    this.#process.stdio[3].write(JSON.stringify({ id, method, params, sessionId }) + "\0");
    return new Promise((resolve, reject) => this.#waiting.set(id, { resolve, reject }));
  }

  async page() {
    const { targetId } = await this.send("Target.createTarget", { url: "about:blank" });
    const { sessionId } = await this.send("Target.attachToTarget", { targetId, flatten: true });
    const page = new Page(this, sessionId, targetId);
    this.#listeners.set(sessionId, (method, params) => page.happened(method, params));
    for (const domain of ["Page", "Runtime", "Network", "Log"]) await page.send(`${domain}.enable`);
    return page;
  }

  async close() {
    const gone = new Promise((resolve) => this.#process.on("exit", resolve));
    await this.send("Browser.close").catch(() => {});
    await gone;
    rmSync(this.#profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  }
}

class Page {
  complaints = [];
  requests = [];
  #browser;
  #channel;
  #target;
  #loaded = () => {};

  constructor(browser, channel, target) {
    this.#browser = browser;
    this.#channel = channel;
    this.#target = target;
  }

  happened(method, params) {
    if (method === "Page.loadEventFired") this.#loaded();
    if (method === "Network.requestWillBeSent") this.requests.push(params.request.url);
    if (method === "Log.entryAdded") this.complaints.push(params.entry.text);
    if (method === "Runtime.exceptionThrown") this.complaints.push(params.exceptionDetails.text);
    if (method === "Runtime.consoleAPICalled") this.complaints.push(`console.${params.type}`);
  }

  send(method, params = {}) {
    return this.#browser.send(method, params, this.#channel);
  }

  close() {
    return this.#browser.send("Target.closeTarget", { targetId: this.#target });
  }

  async size(width, height) {
    await this.send("Emulation.setDeviceMetricsOverride",
      { width, height, deviceScaleFactor: 1, mobile: width < 600 });
  }

  async dark(on) {
    const features = [{ name: "prefers-color-scheme", value: on ? "dark" : "light" }];
    await this.send("Emulation.setEmulatedMedia", { features });
  }

  async open(url) {
    this.complaints = [];
    this.requests = [];
    const loaded = new Promise((resolve) => { this.#loaded = resolve; });
    await this.send("Page.navigate", { url });
    await loaded;
  }

  /** The value of an expression in the page; a promise is waited for. */
  async value(expression) {
    const answer = await this.send("Runtime.evaluate",
      { expression, returnByValue: true, awaitPromise: true });
    if (answer.exceptionDetails) {
      throw new Error(answer.exceptionDetails.exception?.description ?? "evaluation failed");
    }
    return answer.result.value;
  }

  /** The page as PDF on paper of that size in inches. */
  async print(paperWidth, paperHeight) {
    const { data } = await this.send("Page.printToPDF",
      { paperWidth, paperHeight, preferCSSPageSize: true, printBackground: false,
        generateTaggedPDF: false, generateDocumentOutline: false,
        marginTop: 0.6, marginBottom: 0.75, marginLeft: 0.6, marginRight: 0.6 });
    return Buffer.from(data, "base64");
  }

  /** A picture of the whole page, or of its first so many pixels. */
  async picture(most = 20000) {
    const { cssContentSize } = await this.send("Page.getLayoutMetrics");
    const clip = { x: 0, y: 0, width: cssContentSize.width,
      height: Math.min(cssContentSize.height, most), scale: 1 };
    const { data } = await this.send("Page.captureScreenshot",
      { format: "png", clip, captureBeyondViewport: true });
    return Buffer.from(data, "base64");
  }
}
