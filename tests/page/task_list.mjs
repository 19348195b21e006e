// What makers do, one task each: read, write from nothing, paste, mend, spell, compare, weigh, label,
// look up, practise, send. A finger taps; without one, keys do.
import { named } from "./hands.mjs";

function expect(true_, words) {
  if (!true_) throw new Error(words);
}

/** Puts the caret behind the last letter of the card. */
async function toEnd(hands) {
  await hands.page.value(`document.querySelector(".cm-content").focus()`);
  await hands.press("End", "ctrl");
}

/** Goes to a page by its key, or by a tap. */
async function go(hands, finger, number, words) {
  if (finger) await hands.tap(named(words), true);
  else await hands.press(String(number), "alt");
  await hands.until(`!document.querySelector("#other").hasAttribute("aria-busy")
    && document.querySelector("#other-title").textContent === ${JSON.stringify(words)}
    && document.querySelector("#other").childElementCount > 0`, words);
}

/** Presses a button that has the words: with a finger, or by the focus and a key. */
async function push(hands, finger, words, within = "document") {
  if (finger) {
    await hands.tap(named(words, within), true);
    return;
  }
  await hands.page.value(`${named(words, within)}.focus()`);
  await hands.press("Enter");
}

const notes = `[...document.querySelectorAll(".note")].map((one) => one.innerText).join()`;
const frame = `document.querySelector("iframe.sheet").contentDocument.body.innerText`;

async function readFirst(hands) {
  expect(/must change/.test(await hands.seen("#sentence")), "the sentence says that something must change");
  const notes = await hands.page.value(`[...document.querySelectorAll(".note.must")].map((one) => one.innerText).join()`);
  expect(notes.includes("2.4 %"), "the scent's limit stands in a note");
  const places = await hands.page.value(`[...document.querySelectorAll(".note")].map((one) => {
    const box = one.getBoundingClientRect();
    return [box.top, box.bottom];
  }).sort((a, b) => a[0] - b[0])`);
  expect(places.length > 2, "notes stand beside the card");
  for (let at = 1; at < places.length; ++at) {
    expect(places[at][0] >= places[at - 1][1] - 1, "no note covers another");
  }
  expect((await hands.seen("#reminder")).includes("not a safety assessment"), "the reminder is in sight");
}

async function why(hands, finger) {
  if (finger) {
    await hands.tap(`document.querySelector(".note.must button.why")`, true);
  } else {
    await hands.press("ArrowDown", "alt");
    expect(await hands.page.value(`document.activeElement.classList.contains("note")`), "a note has the focus");
    await hands.press("w", "alt");
  }
  await hands.until(`document.querySelector("button.why[aria-expanded=true]")`, "the reason is open");
  expect((await hands.page.value(`[...document.querySelectorAll(".because")].map((one) => one.innerText).join()`)).length > 80,
         "a reason is told");
}

async function fromNothing(hands, finger) {
  await push(hands, finger, "new card");
  await hands.until(`document.querySelector("dialog[open]")`);
  await hands.page.value(`document.querySelector("#new-name").focus()`);
  await hands.write("Gannet Bar");
  await push(hands, finger, "begin");
  await hands.until(`!document.querySelector("dialog")`);
  await hands.settled();
  await toEnd(hands);
  await hands.write("44 % sodium bicarb");
  await hands.until(`document.querySelector(".cm-tooltip-autocomplete li")`, "the catalogue's names are offered");
  await hands.press("Escape");
  await hands.write("onate\n15 % cream of tartar\n24 % SLSA\nq.s. corn starch\n2.5 % glycerin\n2 % polysorbate 80");
  await hands.press("Escape");
  await hands.settled();
  const card = await hands.card();
  expect(card.includes("2 % polysorbate 80") && card.includes('formula "Gannet Bar"'), `the card is written: ${card}`);
  expect(!(await hands.seen("#sentence")).includes("cannot be read"),
         `the card can be read: ${await hands.seen(".note")}`);
}

async function pasteList(hands) {
  await toEnd(hands);
  await hands.press("a", "ctrl");
  await hands.write('formula "Pasted"\nproduct bath fizzy\nphase "all"\n');
  await hands.paste("Ingredients:\n• 450 g baking soda\n225g citric acid\nCorn starch\t120 g\n15 g sweet almond oil\n1 000 g salt");
  await hands.settled();
  const card = await hands.card();
  expect(/450 g\s+baking soda/.test(card) && /225 g\s+citric acid/.test(card) && /120 g\s+Corn starch/.test(card),
         `the list came in as lines: ${card}`);
  expect(/^\s+1 000 g salt$/m.test(card), "what cannot be read stays, and is no comment");
  await hands.until(`!document.querySelector("#pencil").hidden`, "it is in pencil");
  await hands.press("z", "ctrl");
  await hands.settled();
  expect(!(await hands.card()).includes("450"), "undo takes all of it back at once");
}

async function mend(hands, finger) {
  await go(hands, finger, 2, "Mend");
  await hands.until(`document.querySelector(".answer .take")`, "an answer");
  if (finger) await hands.tap(`document.querySelector(".answer .take")`, true);
  else {
    await hands.page.value(`document.querySelector(".answer .take").focus()`);
    await hands.press("Enter");
  }
  await hands.until(`!document.querySelector("#pencil").hidden`, "the mend is in pencil");
  await hands.settled();
  const card = await hands.card();
  expect(!/3 %\s+"Sea Fig"/.test(card), `the scent is lower: ${card}`);
  expect(!(await hands.page.value(`[...document.querySelectorAll(".note")].map((one) => one.innerText).join()`))
    .includes("scent is more than certificate"), "what was broken is kept");
  await push(hands, finger, "take back", `document.querySelector("#pencil")`);
  await hands.settled();
  expect(/3 %\s+"Sea Fig"/.test(await hands.card()), "taken back");
}

async function spell(hands, finger) {
  await toEnd(hands);
  await hands.press("a", "ctrl");
  await hands.write('formula "Comma"\nproduct bath fizzy\nphase "all"\n0,6 % kaolin\nq.s. sodium bicarbonate');
  await hands.press("Escape");
  await hands.settled();
  expect((await hands.seen(".note.must")).includes("0.6"), "the comma is told of");
  await push(hands, finger, "write 0.6", `document.querySelector(".note.must")`);
  await hands.settled();
  expect((await hands.card()).includes("0.6 % kaolin"), "the point is written");
}

async function compare(hands, finger) {
  await hands.page.value(`document.querySelector(".cm-content").focus()`);
  await toEnd(hands);
  await hands.write("\n# raised");
  await go(hands, finger, 3, "Beside its base");
  await hands.until(`document.querySelector("iframe.sheet")?.contentDocument?.body?.innerText.length > 100`, "a comparison");
}

async function weigh(hands, finger) {
  await go(hands, finger, 4, "Bench");
  await hands.until(`document.querySelector("iframe.sheet")?.contentDocument?.body?.innerText.length > 300`, "a sheet");
  expect(/880\.0 g/.test(await hands.page.value(frame)), "the sheet has the weighings");
}

async function label(hands, finger) {
  await go(hands, finger, 5, "Pack");
  expect((await hands.seen(".printed")).includes("Sodium Bicarbonate"), "the ingredient list is there");
  await push(hands, finger, "copy the list");
  await hands.until(`[...document.querySelectorAll("button")].some((one) => one.textContent === "copied")`);
}

async function lookUp(hands, finger) {
  await go(hands, finger, 7, "Look up");
  await hands.page.value(`document.querySelector("#topic").focus()`);
  await hands.write("emulsifier-to-oil");
  if (finger) await push(hands, finger, "explain");
  else await hands.press("Enter");
  await hands.until(`(document.querySelector(".told iframe")?.contentDocument?.body?.innerText ?? "").includes("must hold")`, "the rule in full");
}

async function drill(hands, finger) {
  await go(hands, finger, 8, "Practise");
  for (let number = 0; number < 5; ++number) {
    await hands.until(`document.querySelector(".question") || document.querySelector("#figure")`, "a question");
    await push(hands, finger, "hint");
    await hands.until(`document.querySelector(".said p")`, "a hint");
    await push(hands, finger, "answer");
    await hands.until(`document.querySelector(".solution dd")`, "a solution");
    if (number < 4) await push(hands, finger, "next");
  }
  await push(hands, finger, "to the score");
  await hands.until(`document.querySelector(".score").textContent === "Found without help: 0 of 5"`, "a score");
  await push(hands, finger, "another 5");
  await hands.until(`document.querySelector("ol.choices button:enabled, #figure")`, "the next exercise");
}

/** A name that nobody knows is a scent, whose certificate is asked for. */
async function scent(hands, finger) {
  await toEnd(hands);
  await hands.press("a", "ctrl");
  await hands.write('formula "Scented"\nproduct bath fizzy\nphase "all"\n600 g sodium bicarbonate\n300 g citric acid\n9 g "Dune Rose"');
  await hands.press("Escape");
  await hands.settled();
  await push(hands, finger, "it is a scent", `document.querySelector(".note.must")`);
  await hands.settled();
  expect((await hands.card()).includes('fragrance "Dune Rose"'), "its section is begun");
  await hands.until(`!document.querySelector("#sentence").innerText.includes("cannot be read")`, "the card can be read");
  expect((await hands.page.value(notes)).includes("certificate of 'Dune Rose'"), "the certificate is asked for");
}

/** Several formulas opened together, one of which takes in another, and a rule of the reader's own. */
async function folder(hands, finger) {
  await hands.give({
    "a.formula": 'include "scents.formula"\nformula "First"\nproduct bath fizzy\nphase "all"\n600 g sodium bicarbonate\n300 g citric acid\n6 g "Dune Rose"\n',
    "b.formula": 'formula "Second"\nproduct bath fizzy\nphase "all"\n600 g sodium bicarbonate\n300 g citric acid\n',
    "scents.formula": 'fragrance "Dune Rose"\n  limit 1 %\n  category 9\n  undeclared none\n',
    "house.yaml": 'subject: House rules\nedition: "2026-11"\nauthority: craft\nsources:\n' +
      '  - { id: house-notebook, kind: common practice, title: Our notebook }\nrules:\n' +
      '  - id: starch-for-slip\n    title: Enough starch for a clean release\n    when: product = bath fizzy\n' +
      '    expect: supplied(starch) >= 10 %\n    otherwise: warning\n    message: "{supplied(starch)} of starch"\n' +
      '    why: Our press lets go of what holds some starch.\n    remedy: Add starch.\n    sources: [house-notebook]\n',
  });
  await push(hands, finger, "open");
  await hands.until(`document.querySelector("#file-name").textContent === "a.formula"`, "the first is open");
  await hands.settled();
  await hands.until(`${notes}.includes("of starch")`, "the own rule speaks");
  await toEnd(hands);
  await hands.write("# kept\n");
  await push(hands, finger, "b.formula");
  await hands.until(`document.querySelector("#file-name").textContent === "b.formula"`, "the second is open");
  await push(hands, finger, "a.formula");
  await hands.settled();
  expect((await hands.card()).includes("# kept"), "what was changed of the first is still there");
  await push(hands, finger, "leave out");
  await hands.until(`!${notes}.includes("of starch")`, "the own rule is gone");
}

/** Moves a line by its wide slider: what turns is shown, and undo takes it back. */
async function tryAmount(hands, finger) {
  await hands.until(`Number(document.body.dataset.bars) > 5`, "bars beside the lines");
  if (finger) {
    await hands.tap(`[...document.querySelectorAll("button.bar")]
      .find((one) => one.getAttribute("aria-label").startsWith("glycerin"))`, true);
  } else {
    await hands.page.value(`(() => { const card = document.querySelector(".cm-content");
      const view = (card.cmTile ?? card.cmView).view;
      view.focus();
      view.dispatch({ selection: { anchor: view.state.doc.toString().indexOf("glycerin") } }); })()`);
    await hands.press("t", "alt");
  }
  await hands.until(`document.activeElement.matches("#trial .bar")`, "the slider has the focus");
  for (let turn = 0; turn < 3; ++turn) await hands.press("End");
  await hands.until(`document.querySelector("#trial li.must, #trial li.should, #trial li.note")`, "what turns is shown");
  const card = await hands.card();
  await push(hands, finger, "write it", `document.querySelector("#trial")`);
  await hands.settled();
  expect(await hands.card() !== card, "another amount is written");
  await push(hands, finger, "take back", `document.querySelector("#pencil")`);
  expect(await hands.card() === card, "taken back");
}

/** What the reader allows to be kept is there after the page was closed. */
async function remembered(hands, finger, url) {
  await hands.page.value(`document.querySelector("#allow").click()`);
  await toEnd(hands);
  await hands.write("\n# remembered");
  await hands.settled();
  await hands.page.open("about:blank");
  await hands.page.open(url);
  await hands.settled();
  expect((await hands.card()).includes("# remembered"), "the card is as it was left");
  await hands.page.value(`document.querySelector("#allow").click()`);
  await hands.page.open("about:blank");
  await hands.page.open(url);
  await hands.settled();
  expect(!(await hands.card()).includes("# remembered"), "nothing is kept any more");
}

async function link(hands, finger) {
  await toEnd(hands);
  await hands.write("\n# sent");
  await hands.settled();
  await hands.page.value(`(() => { window.copied = ""; const old = document.execCommand;
    navigator.clipboard.writeText = async (words) => { window.copied = words; }; })()`);
  await push(hands, finger, "copy a link");
  await hands.until(`window.copied !== ""`);
  const address = await hands.page.value("window.copied");
  await hands.page.open("about:blank");
  await hands.page.open(address);
  await hands.settled();
  expect((await hands.card()).includes("# sent"), "the card came with the link");
}

async function keyList(hands) {
  await hands.press("F1");
  await hands.until(`document.querySelector("dialog.keys[open]")`);
}

export const tasks = [
  { name: "read the first card", act: readFirst, dark: true },
  { name: "ask why", act: why },
  { name: "write a card from nothing", act: fromNothing, dark: true },
  { name: "paste a recipe", act: pasteList },
  { name: "mend and take back", act: mend, dark: true },
  { name: "mend a spelling", act: spell },
  { name: "put it beside its base", act: compare },
  { name: "print the bench sheet", act: weigh },
  { name: "copy the label", act: label, dark: true },
  { name: "look a rule up", act: lookUp },
  { name: "practise", act: drill, dark: true },
  { name: "send it as a link", act: link },
  { name: "tell of a scent", act: scent },
  { name: "open a folder", act: folder },
  { name: "try an amount", act: tryAmount, dark: true },
  { name: "keep it here", act: remembered },
  { name: "list the keys", act: keyList },
];
