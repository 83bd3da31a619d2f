/**
 * TEXT(number, mask): the engine's own knows the simplest masks only and prints the rest as they are.
 *
 * Understood: 0 # ? digits, thousands comma, point, %, E+00, fractions (# ?/?, # ??/64), "text" and \x as they are,
 * up to three sections positive;negative;zero, and General. A point with no digit after it is dropped.
 */

/** `value` as `mask` says; undefined for dates and times, which no mask here makes. */
export function masked(value: number, mask: string): string | undefined {
  const sections = sectionsOf(mask);
  const [positive = "General", negative, zero] = sections;
  if (value < 0 && negative !== undefined) return section(-value, negative);
  if (value === 0 && zero !== undefined) return section(value, zero);
  return value < 0 ? `-${section(-value, positive)}` : section(value, positive);
}

function sectionsOf(mask: string): string[] {
  const sections = [""];
  for (const piece of mask.match(/"[^"]*"?|\\.?|[\s\S]/g) ?? []) {
    if (piece === ";") sections.push("");
    else sections[sections.length - 1] += piece;
  }
  return sections;
}

function section(value: number, mask: string): string {
  if (/^\s*(general|standard)?\s*$/i.test(mask)) return mask === "" ? "" : String(value);
  const literals: string[] = [];
  // Literal text is put aside, marked by one private character, while the digits are worked out.
  const bare = mask.replace(/"([^"]*)"?|\\(.)?/g, (_, quoted?: string, single?: string) => {
    literals.push(quoted ?? single ?? "");
    return "\uE000";
  });
  let next = 0;
  return digits(value, bare).replace(/\uE000/g, () => literals[next++] ?? "");
}

function digits(value: number, mask: string): string {
  const fraction = /([#0?]*)(\s+)?([#?0]+)\/(\d+|[#?0]+)/.exec(mask);
  if (fraction) return around(mask, fraction, asFraction(value, fraction));
  const scaled = value * 100 ** (mask.match(/%/g)?.length ?? 0);
  const scientific = /([#0?,]+)(?:\.([#0?]*))?[eE]([+-])(0+)/.exec(mask);
  if (scientific) return around(mask, scientific, asScientific(scaled, scientific));
  const plain = /[#0?,]*[#0?](?:\.[#0?]*)?|\.[#0?]+/.exec(mask);
  return plain ? around(mask, plain, asPlain(scaled, plain[0])) : mask;
}

function around(mask: string, found: RegExpExecArray, text: string): string {
  return mask.slice(0, found.index) + text + mask.slice(found.index + found[0].length);
}

function asPlain(value: number, mask: string): string {
  const [whole = "", decimals = ""] = mask.split(".");
  const [integer = "0", rest = ""] = fixed(value, decimals.length).split(".");
  const least = whole.match(/0/g)?.length ?? 0;
  let front = integer === "0" && least === 0 ? "" : integer.padStart(least, "0");
  if (whole.includes(",")) front = front.replace(/\B(?=(\d{3})+$)/g, ",");
  const kept = decimals.lastIndexOf("0") + 1;
  let back = rest;
  while (back.length > kept && back.endsWith("0")) back = back.slice(0, -1);
  return back === "" && decimals.indexOf("0") < 0 ? front || "0" : `${front}.${back}`;
}

function asScientific(value: number, found: RegExpExecArray): string {
  const [, , decimals = "", sign, places = "0"] = found;
  const [front = "0", power = "0"] = value.toExponential(decimals.length).split("e");
  const shown = power.slice(1).padStart(places.length, "0");
  return `${front}E${power.startsWith("-") ? "-" : sign === "+" ? "+" : ""}${shown}`;
}

function asFraction(value: number, found: RegExpExecArray): string {
  const [, wholeMask, gap, , below = "?"] = found;
  const hasWhole = Boolean(wholeMask) && gap !== undefined;
  const whole = hasWhole ? Math.floor(value) : 0;
  const rest = value - whole;
  const given = Number(below);
  const [top, bottom] = given > 0 ? [Math.round(rest * given), given] : nearest(rest, 10 ** below.length - 1);
  if (!hasWhole) return `${top}/${bottom}`;
  if (top === 0) return String(whole);
  if (top === bottom) return String(whole + 1);
  return whole === 0 ? `${top}/${bottom}` : `${whole} ${top}/${bottom}`;
}

/** The fraction nearest `value` whose denominator is at most `most`; of two equally near the one with the smaller. */
function nearest(value: number, most: number): [number, number] {
  let best: [number, number] = [Math.round(value), 1];
  for (let bottom = 2; bottom <= Math.min(most, 9999); bottom++) {
    const top = Math.round(value * bottom);
    if (Math.abs(top / bottom - value) < Math.abs(best[0] / best[1] - value) - 1e-12) best = [top, bottom];
  }
  return best;
}

/** Rounds half away from zero as a person does: 1.005 to two places is 1.01 though the double lies below. */
function fixed(value: number, places: number): string {
  if (!(Math.abs(value) < 1e21) || places > 15) return value.toFixed(Math.min(places, 100));
  const [front, power = "0"] = String(value).split("e");
  const shifted = Math.round(Number(`${front}e${Number(power) + places}`));
  return Math.abs(shifted) < 1e15 ? Number(`${shifted}e-${places}`).toFixed(places) : value.toFixed(places);
}
