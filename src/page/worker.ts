// The checker in a thread of its own: questions in, answers out, in the order of asking.

interface Border {
  _sudsmark_answer(question: number): number;
  _malloc(bytes: number): number;
  _free(at: number): void;
  UTF8ToString(at: number): string;
  lengthBytesUTF8(text: string): number;
  stringToUTF8(text: string, at: number, most: number): void;
}
declare const sudsmarkBorder: (options: { wasmBinary: ArrayBuffer }) => Promise<Border>;

type Message = { wasm: ArrayBuffer } | { id: number; question: string };
interface Thread {
  onmessage: ((event: MessageEvent<Message>) => void) | null;
  postMessage(message: { id: number; answer: string }): void;
}
const thread = self as unknown as Thread;

let border: Promise<Border> | undefined;

function answer(to: Border, question: string): string {
  const bytes = to.lengthBytesUTF8(question) + 1;
  const at = to._malloc(bytes);
  to.stringToUTF8(question, at, bytes);
  const said = to.UTF8ToString(to._sudsmark_answer(at));
  to._free(at);
  return said;
}

thread.onmessage = async ({ data }) => {
  if ("wasm" in data) {
    border = sudsmarkBorder({ wasmBinary: data.wasm });
    return;
  }
  if (border === undefined) return;
  thread.postMessage({ id: data.id, answer: answer(await border, data.question) });
};
