/**
 * JSON text with the line of every part of it: a job that cannot be opened must say where.
 *
 * The language's own parser gives no lines for what is valid JSON but no valid job, and lets a key stand twice.
 */

export class JsonError extends Error {
  constructor(
    readonly line: number,
    readonly column: number,
    message: string,
  ) {
    super(message);
  }
}

export interface Located {
  readonly value: unknown;
  /** Line, from 1, of the value under these keys; of the nearest enclosing one if there is none. */
  lineOf(path: readonly (string | number)[]): number;
}

const deepest = 32;
const cutOff = "the text ends too early: it seems to be cut off";

/** @throws JsonError */
export function parseJson(text: string): Located {
  return {
    value: new Reader(text, false).document(),
    lineOf(path) {
      // Read a second time, since only a faulty file is asked for its lines.
      const reader = new Reader(text, true);
      reader.document();
      for (let length = path.length; length >= 0; length--) {
        const at = reader.places.get(keyOf(path.slice(0, length)));
        if (at !== undefined) return reader.position(at).line;
      }
      return 1;
    },
  };
}

function keyOf(path: readonly (string | number)[]): string {
  return JSON.stringify(path.map(String));
}

class Reader {
  readonly places = new Map<string, number>();
  private at = 0;
  private readonly path: (string | number)[] = [];

  constructor(
    private readonly text: string,
    private readonly keepPlaces: boolean,
  ) {
    // A byte-order mark that some editors put in front.
    if (text.startsWith("\ufeff")) this.at = 1;
  }

  document(): unknown {
    const value = this.value();
    this.space();
    if (this.at < this.text.length) this.fail("nothing may follow the closing brace");
    return value;
  }

  position(at: number): { line: number; column: number } {
    const before = this.text.slice(0, at);
    const line = before.split("\n").length;
    return { line, column: at - before.lastIndexOf("\n") };
  }

  private value(): unknown {
    this.space();
    if (this.at >= this.text.length) this.fail(cutOff);
    if (this.keepPlaces) this.places.set(keyOf(this.path), this.at);
    if (this.path.length > deepest) this.fail(`nested deeper than ${deepest}`);
    const sign = this.text[this.at]!;
    if (sign === "{") return this.object();
    if (sign === "[") return this.array();
    if (sign === '"') return this.string();
    const word = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.])/y;
    word.lastIndex = this.at;
    const found = word.exec(this.text);
    if (!found) this.fail(`a value is expected here, not ${this.here()}`);
    this.at = word.lastIndex;
    return JSON.parse(found[0]);
  }

  private object(): Record<string, unknown> {
    const entries = new Map<string, unknown>();
    this.at += 1;
    for (let first = true; !this.ends("}", first); first = false) {
      this.space();
      const start = this.at;
      if (this.text[start] !== '"') this.fail(`a key in double quotes is expected here, not ${this.here()}`);
      const key = this.string();
      if (key === "__proto__") this.fail("__proto__ cannot be a key", start);
      if (entries.has(key)) this.fail(`the key "${key}" stands here a second time`, start);
      this.space();
      if (this.text[this.at] !== ":") this.fail(`a colon is expected after the key, not ${this.here()}`);
      this.at += 1;
      this.path.push(key);
      entries.set(key, this.value());
      this.path.pop();
    }
    return Object.fromEntries(entries);
  }

  private array(): unknown[] {
    const values: unknown[] = [];
    this.at += 1;
    while (!this.ends("]", values.length === 0)) {
      this.path.push(values.length);
      values.push(this.value());
      this.path.pop();
    }
    return values;
  }

  /** True after the closing sign; steps over the comma before all entries but the first. */
  private ends(closing: string, first: boolean): boolean {
    this.space();
    if (this.at >= this.text.length) this.fail(cutOff);
    if (this.text[this.at] === closing) {
      this.at += 1;
      return true;
    }
    if (first) return false;
    if (this.text[this.at] !== ",") this.fail(`a comma or ${closing} is expected here, not ${this.here()}`);
    this.at += 1;
    this.space();
    if (this.text[this.at] === closing) this.fail(`no comma may stand before ${closing}`);
    return false;
  }

  private string(): string {
    const start = this.at;
    // biome-ignore lint/suspicious/noControlCharactersInRegex: those are what a text must not hold
    const whole = /"[^"\\\u0000-\u001f]*(?:\\(?:["\\/bfnrt]|u[\da-fA-F]{4})[^"\\\u0000-\u001f]*)*"/y;
    whole.lastIndex = start;
    const found = whole.exec(this.text);
    if (!found) {
      const isCut = /^"[^"\\\n]*(?:\\[^\n][^"\\\n]*)*\\?$/.test(this.text.slice(start));
      this.fail(isCut ? cutOff : "this text is not closed, or holds a sign that must be escaped", start);
    }
    this.at = whole.lastIndex;
    return JSON.parse(found[0]) as string;
  }

  private space(): void {
    while (/[ \t\r\n]/.test(this.text[this.at] ?? "")) this.at += 1;
  }

  private here(): string {
    const sign = this.text[this.at];
    return sign === undefined ? "the end" : JSON.stringify(sign);
  }

  private fail(message: string, at = this.at): never {
    const { line, column } = this.position(at);
    throw new JsonError(line, column, message);
  }
}
