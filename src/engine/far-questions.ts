/** Questions that are on their way to a worker, and may have to go to the next one. */
import type { Order, Reply } from "./packets.ts";
import type { Answer, Question } from "./questions.ts";

interface Open {
  readonly question: Question;
  readonly done: (answer: Answer) => void;
  readonly fail: (reason: Error) => void;
}

export class FarQuestions {
  private last = 0;
  private readonly open = new Map<number, Open>();

  get waiting(): boolean {
    return this.open.size > 0;
  }

  /** @param send is given the order for the worker */
  ask(question: Question, send: (order: Order) => void): Promise<Answer> {
    return new Promise((done, fail) => {
      const id = ++this.last;
      this.open.set(id, { question, done, fail });
      send({ order: "ask", id, question });
    });
  }

  /** All that are open once more, for another worker. */
  *orders(): Generator<Order> {
    for (const [id, { question }] of this.open) yield { order: "ask", id, question };
  }

  hear({ answers, answer, failed }: Reply): void {
    const open = this.open.get(answers);
    this.open.delete(answers);
    if (answer) open?.done(answer);
    else open?.fail(new Error(failed));
  }

  /** Nothing more comes of them. */
  drop(reason: string): void {
    const all = [...this.open.values()];
    this.open.clear();
    for (const { fail } of all) fail(new Error(reason));
  }
}
