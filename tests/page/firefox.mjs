// Firefox without a window, driven by its Marionette protocol: no library in between. A message is
// its length, a colon, and a list as JSON.
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";

const names = ["/usr/bin/firefox-esr", "/usr/bin/firefox"];

export function findFirefox() {
  return names.find((name) => existsSync(name));
}

const wait = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

/** The port that the browser has chosen, when it has. */
async function portOf(profile) {
  const file = join(profile, "MarionetteActivePort");
  for (let turn = 0; turn < 600; ++turn) {
    if (existsSync(file)) {
      const port = Number(readFileSync(file, "utf8"));
      if (port > 0) return port;
    }
    await wait(100);
  }
  throw new Error("the browser opened no port");
}

export class Firefox {
  #process;
  #socket;
  #profile = mkdtempSync(join(tmpdir(), "sudsmark-firefox-"));
  #waiting = new Map();
  #number = 0;
  #rest = Buffer.alloc(0);

  static async start(path) {
    const browser = new Firefox();
    writeFileSync(join(browser.#profile, "user.js"),
      'user_pref("marionette.port", 0);\nuser_pref("app.update.enabled", false);\n' +
      'user_pref("datareporting.policy.dataSubmissionEnabled", false);\n');
    browser.#process = spawn(path,
      ["--headless", "--marionette", "--no-remote", "--remote-allow-system-access", "--profile", browser.#profile],
      { stdio: "ignore", env: { ...process.env, HOME: browser.#profile, MOZ_CRASHREPORTER_DISABLE: "1" } });
    const port = await portOf(browser.#profile);
    browser.#socket = connect(port, "127.0.0.1");
    browser.#socket.on("data", (bytes) => browser.#take(bytes));
    await new Promise((resolve, reject) => browser.#socket.once("connect", resolve).once("error", reject));
    await browser.send("WebDriver:NewSession", { capabilities: { alwaysMatch: { acceptInsecureCerts: false } } });
    return browser;
  }

  #take(bytes) {
    this.#rest = Buffer.concat([this.#rest, bytes]);
    for (;;) {
      const colon = this.#rest.indexOf(0x3a);
      const length = Number(this.#rest.subarray(0, Math.max(colon, 0)).toString());
      if (colon < 0 || this.#rest.length < colon + 1 + length) return;
      const message = JSON.parse(this.#rest.subarray(colon + 1, colon + 1 + length).toString("utf8"));
      this.#rest = this.#rest.subarray(colon + 1 + length);
      if (!Array.isArray(message)) continue; // its greeting
      const [, id, error, result] = message;
      const { resolve, reject } = this.#waiting.get(id);
      this.#waiting.delete(id);
      if (error) reject(new Error(`${error.error}: ${error.message}`));
      else resolve(result);
    }
  }

  send(command, params = {}) {
    const id = ++this.#number;
    const words = JSON.stringify([0, id, command, params]);
    this.#socket.write(`${Buffer.byteLength(words)}:${words}`);
    return new Promise((resolve, reject) => this.#waiting.set(id, { resolve, reject }));
  }

  open(url) {
    return this.send("WebDriver:Navigate", { url });
  }

  size(width, height) {
    return this.send("WebDriver:SetWindowRect", { width, height });
  }

  /** The value of an expression in the page; a promise is waited for. */
  async value(expression) {
    const { value } = await this.send("WebDriver:ExecuteAsyncScript", {
      script: `const done = arguments[arguments.length - 1];
        (async () => (${expression}))().then((value) => done({ value: value ?? null }),
                                             (fault) => done({ fault: String(fault) }));`, args: [] });
    if (value?.fault) throw new Error(value.fault);
    return value?.value;
  }

  /** Waits until an expression is true. */
  async until(expression, what = expression, most = 30000) {
    for (const began = Date.now(); Date.now() - began < most;) {
      if (await this.value(`Boolean(${expression})`)) return;
      await wait(50);
    }
    throw new Error(`waited in vain: ${what}`);
  }

  /** Keys, one after the other, as a keyboard gives them; "\n" is Enter. */
  write(words) {
    const actions = [...words].flatMap((letter) => {
      const value = letter === "\n" ? "\uE007" : letter;
      return [{ type: "keyDown", value }, { type: "keyUp", value }];
    });
    return this.send("WebDriver:PerformActions", { actions: [{ type: "key", id: "keys", actions }] });
  }

  /** A key with Control held. */
  control(key) {
    const value = { End: "\uE010" }[key] ?? key;
    const actions = [{ type: "keyDown", value: "\uE009" }, { type: "keyDown", value },
                     { type: "keyUp", value }, { type: "keyUp", value: "\uE009" }];
    return this.send("WebDriver:PerformActions", { actions: [{ type: "key", id: "keys", actions }] });
  }

  async picture() {
    const { value } = await this.send("WebDriver:TakeScreenshot", { full: true });
    return Buffer.from(value, "base64");
  }

  /** What the browser itself complained of, in words. */
  async complaints() {
    await this.send("Marionette:SetContext", { value: "chrome" });
    const { value } = await this.send("WebDriver:ExecuteScript", {
      script: `return Services.console.getMessageArray()
        .filter((one) => one instanceof Ci.nsIScriptError && (one.sourceName || "").startsWith("file:")
          && !(one.flags & Ci.nsIScriptError.warningFlag))
        .map((one) => one.message);`, args: [] });
    await this.send("Marionette:SetContext", { value: "content" });
    return value;
  }

  async close() {
    const gone = new Promise((resolve) => this.#process.on("exit", resolve));
    // it may be gone before it has answered
    this.#socket.on("error", () => {});
    this.send("Marionette:Quit", { flags: ["eForceQuit"] }).catch(() => {});
    await gone;
    this.#socket.destroy();
    rmSync(this.#profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
}
