/**
 * Unit conversion after the CONVERT function of ISO/IEC 26300-2 (OpenFormula), for length, speed, mass, force and
 * pressure, and besides those "deg", "rad", "arcmin", "ft/min" and "m/min". Names keep their case.
 *
 * Factors are kept as exact fractions so that 1 in is 25.4 mm and back to the last digit. Sources: unit names as
 * ISO/IEC 26300-2 (the list is from memory); factors are the exact definitions of the international yard and pound
 * (1959), the standard gravity and atmosphere (CGPM), the nautical mile (1929), the light year and parsec (IAU), and
 * the atomic mass constant of CODATA 2022.
 */
import Fraction from "fraction.js";
import { NothingFound } from "../thread/failures.ts";
import { finite } from "./bounds.ts";

type Kind = "length" | "speed" | "mass" | "force" | "pressure" | "angle";

interface UnitOfMeasure {
  readonly kind: Kind;
  /** Size in metres, metres per second, grams, newtons, pascals or degrees. */
  readonly size: Fraction;
  /** True where the standard lets an SI prefix stand before the name. */
  readonly prefixed: boolean;
}

const exact = (...factors: (string | number)[]) =>
  factors.reduce((product, factor) => product.mul(factor), new Fraction(1));

const INCH = "0.0254";
const FOOT = "0.3048";
const POUND = "453.59237";
const GRAVITY = "9.80665";
/** More digits than a number holds; a fraction made from Math.PI would stop short of them. */
const PI = "3.14159265358979323846264338327950288";
const POUND_FORCE = exact(POUND, "1/1000", GRAVITY);

const units = new Map<string, UnitOfMeasure>();

/** Adds one size under all its names. */
function unit(kind: Kind, names: string, size: Fraction, prefixed = false): void {
  for (const name of names.split(" ")) units.set(name, { kind, size, prefixed });
}

unit("length", "m", exact(1), true);
unit("length", "ang", exact("1/10000000000"), true);
unit("length", "in", exact(INCH));
unit("length", "ft", exact(FOOT));
unit("length", "yd", exact(FOOT, 3));
unit("length", "ell", exact(INCH, 45));
unit("length", "mi", exact(FOOT, 5280));
unit("length", "survey_mi", exact(5280, "1200/3937"));
unit("length", "Nmi", exact(1852));
unit("length", "Pica picapt", exact(INCH, "1/72"));
unit("length", "pica", exact(INCH, "1/6"));
unit("length", "ly", exact(299792458, 3600, "8766"), true);
unit("length", "parsec pc", exact(149597870700, 648000).div(PI), true);

unit("speed", "m/s m/sec", exact(1), true);
unit("speed", "m/h m/hr", exact("1/3600"), true);
unit("speed", "m/min", exact("1/60"), true);
unit("speed", "ft/min", exact(FOOT, "1/60"));
unit("speed", "mph", exact(FOOT, 5280, "1/3600"));
unit("speed", "kn", exact(1852, "1/3600"));
unit("speed", "admkn", exact(FOOT, 6080, "1/3600"));

unit("mass", "g", exact(1), true);
unit("mass", "u", exact("166053906892", "1/1000000000000000000000", "1/100000000000000"), true);
unit("mass", "grain", exact(POUND, "1/7000"));
unit("mass", "pweight", exact(POUND, "24/7000"));
unit("mass", "ozm", exact(POUND, "1/16"));
unit("mass", "lbm", exact(POUND));
unit("mass", "stone", exact(POUND, 14));
unit("mass", "cwt shweight", exact(POUND, 100));
unit("mass", "lcwt hweight uk_cwt", exact(POUND, 112));
unit("mass", "ton", exact(POUND, 2000));
unit("mass", "LTON brton uk_ton", exact(POUND, 2240));
unit("mass", "sg", POUND_FORCE.div(FOOT).mul(1000));

unit("force", "N", exact(1), true);
unit("force", "dyn dy", exact("1/100000"), true);
unit("force", "pond", exact(GRAVITY, "1/1000"), true);
unit("force", "lbf", POUND_FORCE);

unit("pressure", "Pa p", exact(1), true);
unit("pressure", "atm at", exact(101325), true);
unit("pressure", "mmHg", exact("13.5951", GRAVITY), true);
unit("pressure", "Torr", exact(101325, "1/760"));
unit("pressure", "psi", POUND_FORCE.div(exact(INCH, INCH)));

unit("angle", "deg", exact(1));
unit("angle", "arcmin", exact("1/60"));
unit("angle", "rad", exact(180).div(PI));

/** SI prefixes as powers of ten; "e" is the standard's older spelling of "da". */
const PREFIXES: Readonly<Record<string, number>> = {
  Y: 24,
  Z: 21,
  E: 18,
  P: 15,
  T: 12,
  G: 9,
  M: 6,
  k: 3,
  h: 2,
  da: 1,
  e: 1,
  d: -1,
  c: -2,
  m: -3,
  u: -6,
  n: -9,
  p: -12,
  f: -15,
  a: -18,
  z: -21,
  y: -24,
};

/**
 * @throws NothingFound if a unit is not known or the two measure different things
 */
export function convert(value: number, from: string, to: string): number {
  const source = findUnit(from);
  const target = findUnit(to);
  if (source.kind !== target.kind) {
    throw new NothingFound(
      `"${from}" is a ${source.kind} and "${to}" a ${target.kind}: these do not convert`,
    );
  }
  const { n, d } = source.size.div(target.size);
  // Multiply first where both parts are exact numbers: the quotient is then rounded once only.
  const [over, under] = [Number(n), Number(d)];
  const small = over <= Number.MAX_SAFE_INTEGER && under <= Number.MAX_SAFE_INTEGER;
  const result = small ? (value * over) / under : value * source.size.div(target.size).valueOf();
  return finite("result", Number.isFinite(result) ? result : value * (over / under));
}

function findUnit(name: string): UnitOfMeasure {
  const plain = units.get(name);
  if (plain) return plain;
  // "da" is tried before "d", as the longer of the two.
  for (const length of [2, 1]) {
    const power = PREFIXES[name.slice(0, length)];
    const base = units.get(name.slice(length));
    if (power === undefined || !base?.prefixed) continue;
    return { ...base, size: base.size.mul(new Fraction(10).pow(power) ?? 1) };
  }
  throw new NothingFound(
    `unit "${name}" is not known: length, speed, mass, force, pressure and angle, names keep their case ("mm", "in", "ft/min")`,
  );
}
