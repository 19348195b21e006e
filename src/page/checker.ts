// The checker, asked from the page. It lives in a worker, so that nothing blocks.
import type {
  Exercise, Judged, Margin, Names, Problem, Suggestion, Written,
} from "./answers";

export interface Card {
  file: string;
  text: string;
}
export interface Surroundings {
  files: Record<string, string>;
  rules: { path: string; text: string }[];
}

/** The bytes of a script element that holds them packed and written as base64. */
async function unpacked(id: string): Promise<ArrayBuffer> {
  const written = document.getElementById(id)?.textContent ?? "";
  const packed = Uint8Array.from(atob(written.trim()), (letter) => letter.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate-raw"));
  return new Response(stream).arrayBuffer();
}

export class Checker {
  readonly surroundings: Surroundings = { files: {}, rules: [] };
  #worker: Worker;
  #number = 0;
  #waiting = new Map<number, (answer: unknown) => void>();

  private constructor(worker: Worker) {
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<{ id: number; answer: string }>) => {
      this.#waiting.get(data.id)?.(JSON.parse(data.answer));
      this.#waiting.delete(data.id);
    };
  }

  static async start(): Promise<Checker> {
    const code = document.getElementById("worker")?.textContent ?? "";
    const address = URL.createObjectURL(new Blob([code], { type: "text/javascript" }));
    const worker = new Worker(address);
    const wasm = await unpacked("checker");
    worker.postMessage({ wasm }, [wasm]);
    return new Checker(worker);
  }

  ask<Answer>(question: Record<string, unknown>): Promise<Answer> {
    const id = ++this.#number;
    const whole = JSON.stringify({ ...this.surroundings, ...question });
    this.#worker.postMessage({ id, question: whole });
    return new Promise((resolve) => {
      this.#waiting.set(id, resolve as (answer: unknown) => void);
    });
  }

  margin(card: Card): Promise<Margin> {
    return this.ask({ what: "margin", card });
  }
  names(): Promise<Names> {
    return this.ask({ what: "names" });
  }
  report(command: string, format: string, more: Record<string, unknown>): Promise<Written> {
    return this.ask({ what: "report", command, format, ...more });
  }
  async suggestion(card: Card): Promise<Suggestion | Problem[]> {
    const { report, problems } = await this.report("suggest", "json", { card });
    return report === undefined ? problems ?? [] : JSON.parse(report) as Suggestion;
  }
  async deal(deal: number): Promise<Exercise[]> {
    const dealt = await this.ask<{ exercises?: Exercise[] }>({ what: "deal", deal });
    return dealt.exercises ?? [];
  }
  judge(number: number, typed: string): Promise<Judged> {
    return this.ask({ what: "judge", number, typed });
  }
}
