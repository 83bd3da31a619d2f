/** Which threads are known, from which source and how sure: the reference list of the help and the README. */

export interface Coverage {
  /** The series as the trade calls them. */
  readonly series: string;
  /** Designations that can be typed, apart by ", ". */
  readonly example: string;
  /** Where sizes and form come from, and which edition where it matters. */
  readonly sizes: string;
  /** Which limits of size are held, or why none are. */
  readonly limits: string;
  /** How far the figures are checked, and what rests on memory. */
  readonly sure: string;
  /** The series of the catalogue that the row is about, by name. */
  readonly names: readonly string[];
}

const rows: readonly Coverage[] = [
  {
    names: ["M"],
    series: "ISO metric M",
    example: "M12x1.75-6g, M20x3-P1.5-6H, M10",
    sizes: "ISO 68-1, 261, 724; any diameter x pitch",
    limits:
      "ISO 965-1: grades 3 to 9 (screw), 4 to 8 (nut), positions a to h and G H; other pitches by its formulas, noted",
    sure: "printed values agree but one (M2 minor minimum, a misprint); positions a to d from memory of the 2013 edition",
  },
  {
    names: ["MJ"],
    series: "MJ",
    example: "MJ6x1, MJ10x1.5-4h6h",
    sizes: "ISO 5855-1",
    limits: "ISO 5855-2, from memory",
    sure: "printed proportions agree; limits from memory",
  },
  {
    names: ["UNC", "UNF", "UNEF", "UN", "UNS", "UNRC", "UNRF", "UNREF", "UNR", "UNRS"],
    series: "Unified UNC, UNF, UNEF, 4- to 32-UN, UNS; UNR with a round root",
    example: "1/4-20 UNC-2A, 10-32 UNF, 1 1/8-12 UN-2B, 1-8 UNRC",
    sizes: "ASME B1.1",
    limits: "ASME B1.1, 1A to 3B",
    sure: "printed values agree; two UNR minors are kept as printed, the rule differs. A UNR root is two arcs of 0.108 P and a flat of P/16",
  },
  {
    names: ["UNJC", "UNJF", "UNJEF", "UNJ", "UNJS"],
    series: "UNJ",
    example: "1/4-28 UNJF-3A",
    sizes: "ASME B1.15",
    limits: "ASME B1.15, from memory",
    sure: "printed proportions agree; limits from memory",
  },
  {
    names: ["NC", "NF", "NEF", "Sharp V"],
    series: "American National NC, NF, NEF; sharp V of any pitch",
    example: "1/4-20 NC, 1/2-13 NC-2, 10-32 NF, 3/4-10 Sharp V",
    sizes: "before ASME B1.1; the sizes of UNC, UNF and UNEF",
    limits: "none: the tables of classes 1 to 4 are not at hand",
    sure: "by formula",
  },
  {
    names: ["BSW", "BSF", "Whit"],
    series: "Whitworth BSW, BSF, Whit of any pitch",
    example: "1/2-12 BSW, 1/4 BSW close, 1/2 BSF nut, 3/4-14 Whit",
    sizes: "BS 84:2007",
    limits: "BS 84: close, medium, free; nut medium, normal",
    sure: "printed values agree but one (9/16 minor, another rule); tolerance formulas from memory",
  },
  {
    names: ["BSB", "ME"],
    series: "Brass 26 threads, model engineer",
    example: "3/8-26 BSB, 3/16-40 ME",
    sizes: "common practice, form of BS 84",
    limits: "none exist",
    sure: "by formula; sizes are common practice",
  },
  {
    names: ["BSC"],
    series: "Cycle BSC (CEI)",
    example: "1/4-26 BSC",
    sizes: "BS 811:1950, from memory",
    limits: "none: those of BS 811 (close, medium, free) are not at hand",
    sure: "printed cores agree",
  },
  {
    names: ["BA"],
    series: "British Association BA",
    example: "2 BA, 0 BA nut, 4 BA close",
    sizes: "BS 93:1951, numbers 17 to 25 from the list of 1903",
    limits: "BS 93: close (0 to 10), normal (0 to 16), nut",
    sure: "printed values agree but two approximations",
  },
  {
    names: ["G"],
    series: "Pipe, parallel G (BSPP)",
    example: "G 1/2, G 1/2 A, G 3/4 B",
    sizes: "ISO 228-1",
    limits: "ISO 228-1: A, B, nut",
    sure: "printed values agree",
  },
  {
    names: ["R", "Rc", "Rp"],
    series: "Pipe, joints tight on the thread R, Rc, Rp (BSPT)",
    example: "R 3/4, Rc 1/2, Rp 1/2",
    sizes: "ISO 7-1",
    limits: "ISO 7-1: its turns either way, on diameter at the gauge plane",
    sure: "printed diameters agree; gauge lengths in turns from memory agree with the printed millimetres",
  },
  {
    names: ["NPT", "NPSC"],
    series: "American pipe NPT, NPSC",
    example: "1/4-18 NPT, 1/2-14 NPSC",
    sizes: "ASME B1.20.1",
    limits: "NPSC; none for NPT, which is gauged along its axis",
    sure: "printed values agree",
  },
  {
    names: ["NPSM", "NPSL"],
    series: "American pipe, mechanical joints NPSM, NPSL",
    example: "1/2-14 NPSM, 3/4-14 NPSL",
    sizes: "ASME B1.20.1",
    limits: "ASME B1.20.1: NPSM 2A, 2B; NPSL",
    sure: "NPSM to 3/4 as printed; above that, and NPSL, from memory",
  },
  {
    names: ["NH", "NPSH"],
    series: "American hose NH (fire, garden GHT), NPSH",
    example: "2 1/2-7.5 NH, 3/4 GHT, 3/4-14 NPSH",
    sizes: "NFPA 1963-1993, ASME B1.20.7",
    limits: "NFPA 1963 (fire); ASME B1.20.7 (garden, NPSH)",
    sure: "fire hose agrees with every printed value; garden hose and NPSH limits from memory",
  },
  {
    names: ["Acme", "Stub Acme"],
    series: "Acme, centralizing Acme, Stub Acme",
    example: "1-5 Acme-2G, 1-5 Acme-2C nut, 1-5 Stub Acme",
    sizes: "ASME B1.5-1988, B1.8",
    limits: "2G, 3G, 4G; centralizing 2C, 3C, 4C; Stub 2G. 5C and 6C are not in that edition",
    sure: "printed values agree; coefficients of 2G to 4G from memory",
  },
  {
    names: ["Tr"],
    series: "ISO trapezoidal Tr",
    example: "Tr 20x4, Tr 40x14 P7-7e",
    sizes: "ISO 2901, 2902, 2904",
    limits: "ISO 2903: 7e, 8e, 8c, 9c; 7H, 8H; from pitch 5 up, and c, from memory, noted",
    sure: "printed values agree",
  },
  {
    names: ["S"],
    series: "Saw-tooth S",
    example: "S 48x8",
    sizes: "DIN 513-1, from memory",
    limits: "none: the tables of DIN 513-2 and -3 are not at hand",
    sure: "printed values agree; profile checked by its geometry",
  },
  {
    names: ["Butt", "Push-Butt"],
    series: "Buttress inch",
    example: "2-4 Butt, 2-4 Push-Butt-3",
    sizes: "ASME B1.9, profile from memory",
    limits: "ASME B1.9: 2, 3",
    sure: "printed tolerances agree; profile checked by its geometry",
  },
  {
    names: ["Rd"],
    series: "Round Rd",
    example: "Rd 40x1/6",
    sizes: "DIN 405-1, from memory",
    limits: "none: the tables of DIN 405-2 are not at hand",
    sure: "printed values agree; profile checked by its geometry",
  },
  {
    names: ["Sq"],
    series: "Square",
    example: "Sq 1-4, Sq 40x7",
    sizes: "common practice",
    limits: "none exist",
    sure: "by formula",
  },
  {
    names: ["BSCon", "Pg"],
    series: "Conduit BSCon, Pg",
    example: "3/4-16 BSCon, Pg 16",
    sizes: "BS 31, from memory; DIN 40430",
    limits: "none: those of BS 31 and DIN 40430 are not at hand",
    sure: "Pg as printed; BSCon sizes from memory",
  },
  {
    names: ["RMS"],
    series: "Microscope objective RMS",
    example: "0.8-36 RMS",
    sizes: "ASME B1.11, ISO 8038-1",
    limits: "ASME B1.11",
    sure: "major diameters as printed (0.7952 to 0.7982 in screw); pitch and minor limits from memory",
  },
  {
    names: ["Lowenherz", "Thury"],
    series: "Instruments and clocks: Löwenherz, Thury",
    example: "Löwenherz 6, Thury 5",
    sizes: "Löwenherz: table in a machinists' handbook; Thury: its rule, from memory",
    limits: "none in force",
    sure: "Löwenherz as printed; Thury from memory",
  },
  {
    names: ["SF", "SI"],
    series: "Metric before ISO: French SF, international SI",
    example: "SF 10x1.5, SI 12x1.75",
    sizes: "handbook form; sizes from memory",
    limits: "none in force",
    sure: "from memory; sizes that M has too are found as M",
  },
  {
    names: ["E"],
    series: "Lamp caps and holders E",
    example: "E14, E27, E40",
    sizes: "IEC 60061-1, DIN 40400, from memory",
    limits: "cap and holder, from memory; no pitch diameter",
    sure: "printed pitches agree; the rest from memory, radii checked by their geometry",
  },
  {
    names: ["V"],
    series: "Tyre valve",
    example: "8V1, 5V2, 6V1",
    sizes: "ISO 4570, from memory",
    limits: "none: those of ISO 4570 are not at hand; DIN 7756 (Vg) differs and is not held",
    sure: "diameters and pitches as in print; from memory otherwise",
  },
  {
    names: [],
    series: "Spark plugs, tripods",
    example: "M10x1, M12x1.25, M14x1.25, M18x1.5, 1/4-20 UNC, 3/8-16 UNC",
    sizes: "plain M, and UNC by ISO 1222",
    limits: "those of M and UNC",
    sure: "as M and UNC",
  },
  {
    names: ["Custom"],
    series: "Your own",
    example: "Custom 20x2.5 mm, flanks 30/30, depth 1.5",
    sizes: "what you state, =THREAD.CUSTOM(...)",
    limits: "none",
    sure: "by formula",
  },
];

/** One row for each family of series, in the order of the catalogue where that helps. */
export function coverage(): readonly Coverage[] {
  return rows;
}
