/**
 * Numbers as other languages write them, by Intl (the number formats of CLDR). A comma and a point are both decimal signs
 * (ISO 80000-1); that three figures after a lone comma are decimals, and doubtful, is common practice, no source.
 */
import Decimal from "decimal.js";
import fc from "fast-check";
import { expect, test } from "vitest";
import { doubtIn, groupsByComma, hasDecimalComma, readDecimal, thousands } from "../../src/job/decimal.ts";
import { seeded } from "../lathe/close.ts";

/** Groups by a comma, an apostrophe, a point and a space; decimals by a point in the first two, by a comma in the others. */
const languages = ["en-US", "de-CH", "de-DE", "fr-FR"] as const;

test("a number reads as the number that was written, in whatever language has both signs or a decimal comma", () => {
  const seen = { point: 0, comma: 0, doubtful: 0 };
  const numbers = fc.record({
    whole: fc.integer({ min: -9_999_999, max: 9_999_999 }),
    places: fc.integer({ min: 1, max: 6 }),
    figures: fc.nat(999_999),
    language: fc.constantFrom(...languages),
  });
  fc.assert(
    fc.property(numbers, ({ whole, places, figures, language }) => {
      const size = new Decimal(Math.abs(whole)).plus(
        new Decimal(figures % 10 ** places).div(new Decimal(10).pow(places)),
      );
      const value = whole < 0 ? size.negated() : size;
      const written = new Intl.NumberFormat(language, {
        minimumFractionDigits: places,
        maximumFractionDigits: places,
      }).format(value.toFixed(places) as Intl.StringNumericLiteral);
      const found = readDecimal(written);
      // CLDR has had both apostrophes.
      expect(readDecimal(written.replaceAll("'", "’")), written).toEqual(found);
      if (found === undefined) {
        // Nothing but a point: it reads as it stands.
        expect(new Decimal(written).equals(value), written).toBe(true);
        return;
      }
      expect(new Decimal(found.text).equals(value), written).toBe(true);
      // A lone comma with three figures behind it and one to three before: thousands are written so too.
      const byPoint = language === "en-US" || language === "de-CH";
      const thousandsToo = !byPoint && places === 3 && size.gte(1) && size.lt(1000);
      expect(found.doubtful, written).toBe(thousandsToo);
      expect(doubtIn(`${written} mm`), written).toBe(
        thousandsToo ? `${written} as ${value.toFixed(3)}` : undefined,
      );
      expect(groupsByComma(written), written).toBe(language === "en-US");
      expect(hasDecimalComma(written), written).toBe(!byPoint && !thousandsToo);
      seen[byPoint ? "point" : "comma"]++;
      if (thousandsToo) seen.doubtful++;
    }),
    { ...seeded, numRuns: 2000 },
  );
  for (const [kind, times] of Object.entries(seen))
    expect(times, kind).toBeGreaterThan(kind === "doubtful" ? 0 : 200);
});

test("whole thousands read as such only where they are asked for", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1000, max: 999_999_999 }), fc.boolean(), (size, minus) => {
      const value = minus ? -size : size;
      const written = new Intl.NumberFormat("en-US").format(value);
      expect(thousands(written)).toBe(String(value));
      if (size >= 1_000_000) expect(readDecimal(written)).toBeUndefined();
    }),
    seeded,
  );
  // Groups that are no commas say nothing about commas.
  for (const text of ["1 234.5", "1'234.5"]) expect(groupsByComma(text), text).toBe(false);
  for (const text of ["1,5", "12,34", "1234,567", "1,234.5", "0.5"])
    expect(thousands(text), text).toBeUndefined();
});
