/** Threads and classes that are known by name, but whose figures are not at hand: messages say so instead of guessing. */

const dryseal =
  "is a dryseal pipe thread of ASME B1.20.3, whose crests and roots are not at hand and whose limits are gauged";

/** Series by the word that names them, in small letters. */
const series: Readonly<Record<string, string>> = {
  nptf: `NPTF ${dryseal}`,
  npsf: `NPSF ${dryseal}`,
  npsi: `NPSI ${dryseal}`,
};

/** @returns why a text without a known series has no figures, undefined when it names nothing that is known */
export function whyNotHeld(text: string): string | undefined {
  const words = text.toLowerCase().match(/[a-z]+/g) ?? [];
  return words.flatMap((word) => series[word] ?? [])[0];
}
