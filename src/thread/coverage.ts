/** Which threads are known, from which source and how sure: the reference list of the help and the README. */

export interface Coverage {
  /** The series as the trade calls them. */
  readonly series: string;
  /** Designations that can be typed. */
  readonly example: string;
  /** Where sizes and form come from. */
  readonly sizes: string;
  /** Which limits of size are held, or that none are. */
  readonly limits: string;
  /** How far the figures are checked, and what rests on memory. */
  readonly sure: string;
}

const rows: readonly Coverage[] = [
  {
    series: "ISO metric M",
    example: "M12x1.75-6g, M20x3-P1.5-6H",
    sizes: "ISO 261, ISO 724",
    limits: "ISO 965-1, grades 3 to 9 (screw), 4 to 8 (nut), positions e f g h G H",
    sure: "printed values agree",
  },
];

/** One row for each family of series, in the order of the catalogue. */
export function coverage(): readonly Coverage[] {
  return rows;
}
