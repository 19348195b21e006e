// The checker, asked from the page. It lives in a worker, so that nothing blocks.
import type {
  Exercise, Judged, LeewayLine, Margin, Names, Problem, Solution, Suggestion, Written,
} from "./answers";
import { unpacked } from "./packed";

export interface Card {
  file: string;
  text: string;
}
export interface Surroundings {
  files: Record<string, string>;
  rules: { path: string; text: string }[];
}

/** One worker with a checker in it. */
class Thread {
  #worker: Worker;
  #number = 0;
  #waiting = new Map<number, (answer: unknown) => void>();

  constructor() {
    const code = document.getElementById("worker")?.textContent ?? "";
    const address = URL.createObjectURL(new Blob([code], { type: "text/javascript" }));
    this.#worker = new Worker(address);
    this.#worker.onmessage = ({ data }: MessageEvent<{ id: number; answer: string }>) => {
      this.#waiting.get(data.id)?.(JSON.parse(data.answer));
      this.#waiting.delete(data.id);
    };
  }

  async load(): Promise<void> {
    const wasm = await unpacked("checker");
    this.#worker.postMessage({ wasm }, [wasm]);
  }

  ask<Answer>(question: Record<string, unknown>): Promise<Answer> {
    const id = ++this.#number;
    this.#worker.postMessage({ id, question: JSON.stringify(question) });
    return new Promise((resolve) => {
      this.#waiting.set(id, resolve as (answer: unknown) => void);
    });
  }
}

export class Checker {
  readonly surroundings: Surroundings = { files: {}, rules: [] };
  #quick = new Thread();
  #slow: Promise<Thread> | undefined;

  static async start(): Promise<Checker> {
    const checker = new Checker();
    await checker.#quick.load();
    return checker;
  }

  static async #loaded(): Promise<Thread> {
    const thread = new Thread();
    await thread.load();
    return thread;
  }

  /** Asks the thread that keystrokes are checked in, which is free at once. */
  ask<Answer>(question: Record<string, unknown>): Promise<Answer> {
    return this.#quick.ask({ ...this.surroundings, ...question });
  }
  /** Asks what takes long, in a thread that is made when the first such question comes. */
  async askSlowly<Answer>(question: Record<string, unknown>): Promise<Answer> {
    this.#slow ??= Checker.#loaded();
    return (await this.#slow).ask({ ...this.surroundings, ...question });
  }

  margin(card: Card): Promise<Margin> {
    return this.ask({ what: "margin", card });
  }
  names(): Promise<Names> {
    return this.ask({ what: "names" });
  }
  report(command: string, format: string, more: Record<string, unknown>): Promise<Written> {
    return this.askSlowly({ what: "report", command, format, ...more });
  }
  async suggestion(card: Card): Promise<Suggestion | Problem[]> {
    const { report, problems } = await this.report("suggest", "json", { card });
    return report === undefined ? problems ?? [] : JSON.parse(report) as Suggestion;
  }
  async leeway(card: Card): Promise<LeewayLine[]> {
    const { report } = await this.report("leeway", "json", { card });
    if (report === undefined) return [];
    return (JSON.parse(report) as { formulas: { lines: LeewayLine[] }[] }).formulas[0]?.lines ?? [];
  }
  async deal(seed: number, number: number): Promise<Exercise | Problem[]> {
    const dealt = await this.askSlowly<Exercise & { problems?: Problem[] }>({ what: "deal", deal: seed, number });
    return dealt.problems ?? dealt;
  }
  judge(step: string, typed: string): Promise<Judged> {
    return this.askSlowly({ what: "judge", name: step, typed });
  }
  async hints(): Promise<string[]> {
    return (await this.askSlowly<{ hints: string[] }>({ what: "hints" })).hints;
  }
  solution(): Promise<Solution> {
    return this.askSlowly({ what: "solution" });
  }
}
