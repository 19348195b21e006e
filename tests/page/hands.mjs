// A reader's hands on the page: keys, words, taps, a paste; and what can be seen of it.

const keys = {
  Enter: [13, "\r"], Tab: [9, ""], Escape: [27, ""], ArrowDown: [40, ""], ArrowUp: [38, ""],
  Home: [36, ""], End: [35, ""], Backspace: [8, ""], F1: [112, ""], " ": [32, " "],
};
const held = { alt: 1, ctrl: 2, shift: 8 };

export class Hands {
  constructor(page) {
    this.page = page;
  }

  /** A key with others held: press("z", "ctrl"). */
  async press(key, ...with_) {
    const modifiers = with_.reduce((sum, one) => sum | held[one], 0);
    const [code, text] = keys[key] ?? [key.toUpperCase().charCodeAt(0), modifiers ? "" : key];
    const event = { key, code: /^[a-z]$/.test(key) ? `Key${key.toUpperCase()}` : /^\d$/.test(key) ? `Digit${key}` : key,
      windowsVirtualKeyCode: code, modifiers, ...(text ? { text } : {}) };
    await this.page.send("Input.dispatchKeyEvent", { type: text ? "keyDown" : "rawKeyDown", ...event });
    await this.page.send("Input.dispatchKeyEvent", { type: "keyUp", ...event });
  }

  /** Words, letter by letter, as a keyboard or the one on the screen gives them. */
  async write(words) {
    for (const line of words.split("\n").entries()) {
      if (line[0] > 0) await this.press("Enter");
      if (line[1] !== "") await this.page.send("Input.insertText", { text: line[1] });
    }
  }

  /** A finger, or the button of a mouse, on the middle of what an expression names. */
  async tap(expression, finger = false) {
    // twice: what comes into sight on the way may move it
    const spot = await this.page.value(`(async () => {
      const one = ${expression};
      if (!one) return null;
      for (let turn = 0; turn < 3; ++turn) {
        one.scrollIntoView({ block: "center", inline: "center" });
        await new Promise((seen) => setTimeout(seen, 50));
      }
      const box = one.getBoundingClientRect();
      return { x: box.x + box.width / 2, y: box.y + box.height / 2, width: box.width, height: box.height };
    })()`);
    if (!spot) throw new Error(`nothing to tap: ${expression}`);
    if (finger) {
      const touchPoints = [{ x: spot.x, y: spot.y }];
      await this.page.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints });
      await this.page.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
    } else {
      for (const type of ["mousePressed", "mouseReleased"]) {
        await this.page.send("Input.dispatchMouseEvent",
          { type, x: spot.x, y: spot.y, button: "left", clickCount: 1 });
      }
    }
    return spot;
  }

  /** Chooses files where the page asks for some, as its dialog would. */
  give(files) {
    return this.page.value(`(() => {
      HTMLInputElement.prototype.click = function () {
        const data = new DataTransfer();
        for (const [name, text] of Object.entries(${JSON.stringify(files)})) data.items.add(new File([text], name));
        this.files = data.files;
        this.dispatchEvent(new Event("change"));
      };
    })()`);
  }

  paste(words) {
    return this.page.value(`(() => {
      const data = new DataTransfer();
      data.setData("text/plain", ${JSON.stringify(words)});
      document.activeElement.dispatchEvent(
        new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }));
    })()`);
  }

  /** Waits until an expression is true; complains with what it is otherwise. */
  async until(expression, what = expression, most = 20000) {
    for (const began = Date.now(); Date.now() - began < most;) {
      if (await this.page.value(`Boolean(${expression})`)) return;
      await new Promise((resolve) => setTimeout(resolve, 25));
    }
    throw new Error(`waited in vain: ${what}`);
  }

  /** Waits until what was typed last has been checked. */
  settled() {
    return this.until(`document.body.dataset.ready && !document.body.classList.contains("stale")`,
      "a verdict");
  }

  card() {
    // the editor draws no line that is out of sight
    return this.page.value(`(() => { const card = document.querySelector(".cm-content");
      return (card.cmTile ?? card.cmView).view.state.doc.toString(); })()`);
  }

  seen(selector) {
    return this.page.value(`document.querySelector(${JSON.stringify(selector)})?.innerText ?? ""`);
  }
}

/** A button by its words, for `tap`. */
export function named(words, within = "document") {
  return `[...${within}.querySelectorAll("button, label")]` +
    `.find((one) => one.textContent.trim() === ${JSON.stringify(words)} && one.offsetParent)`;
}
