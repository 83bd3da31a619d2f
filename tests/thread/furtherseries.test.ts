import { expect, test } from "vitest";
import { NothingFound, Unreadable } from "../../src/thread/failures.ts";
import { matchThread } from "../../src/thread/match.ts";
import { readThread } from "../../src/thread/read.ts";

const near = (value: number | undefined, printed: number, tolerance: number) =>
  expect(Math.abs(value! - printed), `${value} against ${printed}`).toBeLessThanOrEqual(tolerance + 1e-9);

// NFPA 1963-1993, tables 1 to 3, as in a machinists' handbook, 27th ed. p. 1875 and 1876, inches: minor, pitch and major
// diameter of the coupling; of the nipple major largest and smallest, pitch largest and smallest, minor largest.
test.each<[string, ...number[]]>([
  ["3/4-8", 1.2246, 1.3058, 1.387, 1.375, 1.3528, 1.2938, 1.2827, 1.2126],
  ["1-8", 1.2246, 1.3058, 1.387, 1.375, 1.3528, 1.2938, 1.2827, 1.2126],
  ["1 1/2-9", 1.8577, 1.9298, 2.002, 1.99, 1.9678, 1.9178, 1.9067, 1.8457],
  ["2 1/2-7.5", 2.9104, 2.997, 3.0836, 3.0686, 3.0366, 2.982, 2.966, 2.8954],
  ["3-6", 3.4223, 3.5306, 3.6389, 3.6239, 3.5879, 3.5156, 3.4976, 3.4073],
  ["3 1/2-6", 4.0473, 4.1556, 4.2639, 4.2439, 4.2079, 4.1356, 4.1176, 4.0273],
  ["4-4", 4.7111, 4.8735, 5.0359, 5.0109, 4.9609, 4.8485, 4.8235, 4.6861],
  ["4 1/2-4", 5.4611, 5.6235, 5.7859, 5.7609, 5.7109, 5.5985, 5.5735, 5.4361],
  ["5-4", 5.9602, 6.1226, 6.285, 6.26, 6.21, 6.0976, 6.0726, 5.9352],
  ["6-4", 6.7252, 6.8876, 7.05, 7.025, 6.975, 6.8626, 6.8376, 6.7002],
])("%s NH has the limits of fire hose in print", (size, ...printed) => {
  const nut = readThread(`${size} NH nut`).limits();
  const screw = readThread(`${size} NH`).limits();
  const ours = [nut.minor.min, nut.pitch.min, nut.major.min, screw.major.max, screw.major.min];
  ours.push(screw.pitch.max, screw.pitch.min, screw.minor.max);
  for (const [i, value] of ours.entries()) near(value, printed[i]!, 0);
});

// Garden hose: 11.5 threads per inch, 1.0625 in over the nipple, 1.0725 in in the coupling, on several public pages.
test("3/4 GHT is garden hose, a sixteenth over an inch", () => {
  const thread = readThread("3/4 GHT");
  expect(thread.designation).toBe("3/4-11.5 NH");
  expect([thread.limits("external").major.max, thread.limits("internal").major.min]).toEqual([
    1.0625, 1.0725,
  ]);
  expect(thread.limitsNote).toContain("from memory");
});

// A fire hose seller's table of threads: outside diameter of the male thread, inches.
test.each([
  ["3/4", 14, 1.035],
  ["1", 11.5, 1.295],
  ["1 1/2", 11.5, 1.878],
  ["2", 11.5, 2.352],
  ["3", 8, 3.47],
  ["3 1/2", 8, 3.97],
  ["4", 8, 4.47],
])("%s NPSH has %d threads per inch on %d in", (size, tpi, outside) => {
  const { pitch, limits } = readThread(`${size} NPSH`);
  expect(1 / pitch).toBeCloseTo(tpi, 9);
  // The seller rounds to 0.005 at most.
  near(limits().major.max, outside, 0.002);
});

// ASME B1.20.1 table 5 as in a machinists' handbook, 27th ed. p. 1865: NPSM, inches.
test.each<[string, ...number[]]>([
  ["1/8", 0.397, 0.39, 0.3725, 0.3689, 0.358, 0.364, 0.3736, 0.3783],
  ["1/4", 0.526, 0.517, 0.4903, 0.4859, 0.468, 0.481, 0.4916, 0.4974],
  ["3/8", 0.662, 0.653, 0.6256, 0.6211, 0.603, 0.612, 0.627, 0.6329],
  ["1/2", 0.823, 0.813, 0.7769, 0.7718, 0.747, 0.759, 0.7784, 0.7851],
  ["3/4", 1.034, 1.024, 0.9873, 0.982, 0.958, 0.97, 0.9889, 0.9958],
])("%s NPSM has the limits in print", (size, ...printed) => {
  const screw = readThread(`${size} NPSM-2A`).limits();
  const nut = readThread(`${size} NPSM-2B`).limits();
  const ours = [screw.major.max, screw.major.min, screw.pitch.max, screw.pitch.min];
  expect([...ours, nut.minor.min, nut.minor.max, nut.pitch.min, nut.pitch.max]).toEqual(printed);
});

// The same table names 0.666025 P between the largest pitch and major diameter, and NPSM's nut begins at E1 of NPT: what
// is remembered above 3/4 must fit both, and the tolerance of the nut is 1.3 times that of the screw as in ASME B1.1.
test.each(["1", "1 1/4", "1 1/2", "2", "2 1/2", "3", "3 1/2", "4", "5", "6"])(
  "the remembered limits of %s NPSM fit the rules of their table",
  (size) => {
    const { limits, note, limitsNote, pitch } = readThread(`${size} NPSM`);
    const screw = limits("external");
    const nut = limits("internal");
    expect(note ?? limitsNote).toContain("from memory");
    near(nut.pitch.min, readThread(`${size} NPT`).pitchDia, 0.0001);
    near((nut.pitch.max! - nut.pitch.min!) / (screw.pitch.max! - screw.pitch.min!), 1.31, 0.03);
    near(screw.major.max! - screw.pitch.max!, 0.649519 * pitch, 0.0012);
  },
);

test("NPSL stands whole half turns of the taper gauge over E1, and its nut a turn further", () => {
  for (const size of ["1/8", "1/4", "3/8", "1/2", "1", "2", "3", "12"]) {
    const { limits, pitch, limitsNote } = readThread(`${size} NPSL`);
    const turns = ((limits("external").pitch.max! - readThread(`${size} NPT`).pitchDia) * 16) / pitch;
    near(turns, Math.round(2 * turns) / 2, 0.02);
    near(limits("internal").pitch.min! - limits("external").pitch.max!, pitch / 16, 0.0001);
    expect(limitsNote).toContain("from memory");
  }
});

// Machinists' handbook, 31st ed. p. 2119: diameters and pitches, mm; 53 degrees 8 minutes, depth 0.75 P, flats 0.125 P;
// over wires M = E - P + 3.2359 W.
test.each([
  ["1", 0.25],
  ["2.3", 0.4],
  ["6", 1],
  ["10", 1.4],
  ["24", 2.8],
  ["40", 4.4],
])("Lowenherz %s has a pitch of %d mm", (size, pitch) => {
  const thread = readThread(`Löwenherz ${size}`);
  expect(thread.pitch).toBe(pitch);
  near(thread.loadFlank + thread.clearanceFlank, 53 + 8 / 60, 0.005);
  near(thread.depth.external, 0.75 * pitch, 0);
  near(thread.rootFlat, 0.125 * pitch, 0);
  near(1 / Math.sin((thread.loadFlank * Math.PI) / 180) + 1, 3.2359, 0.0003);
});

// An open library of thread data (PG electrical thread): minor, major and pitch diameter, mm.
test.each([
  ["7", 11.28, 12.5, 11.89],
  ["9", 13.86, 15.2, 14.53],
  ["11", 17.26, 18.6, 17.93],
  ["13.5", 19.06, 20.4, 19.73],
  ["16", 21.16, 22.5, 21.83],
  ["21", 26.78, 28.3, 27.54],
  ["29", 35.48, 37, 36.24],
  ["36", 45.48, 47, 46.24],
  ["42", 52.48, 54, 53.24],
  ["48", 57.78, 59.3, 58.54],
])("Pg %s has the printed diameters", (size, minor, major, pitchDia) => {
  const thread = readThread(`Pg ${size}`);
  near(thread.minor.external, minor, 0);
  near(thread.major, major, 0);
  near(thread.pitchDia, pitchDia, 0);
});

// Pitches of DIN 40400 in an open modelling library, mm to two decimals: 1.81, 2.82, 3.62, 4.23, 6.35; radii from memory.
test.each([
  ["E10", 1.81, 0.531],
  ["E14", 2.82, 0.822],
  ["E27", 3.62, 1.025],
  ["E33", 4.23, 1.187],
  ["E40", 6.35, 1.85],
])("%s has a pitch of %d mm and arcs of %d mm", (text, pitch, radius) => {
  const thread = readThread(text);
  near(thread.pitch, pitch, 0.01);
  near(thread.rootRadius, radius, 0.0005);
  near(thread.crestRadius, radius, 0.0005);
  expect(thread.note).toContain("from memory");
});

// A not-go gauge for a cap of 10 mm on a standards page (IEC 60061-3): 9.36 mm.
test("the smallest E10 cap is 9.36 mm", () => {
  expect(readThread("E10").limits("external").major.min).toBe(9.36);
});

// A page on sizes of tools: society thread, male 0.7952 to 0.7982, female 0.8000 to 0.8030 in, 36 threads per inch.
test("the microscope objective's screw is smaller than its name", () => {
  const thread = readThread("RMS");
  expect(thread.limits("external").major).toEqual({ min: 0.7952, max: 0.7982 });
  expect(thread.limits("internal").major).toEqual({ min: 0.8, max: 0.803 });
  expect(1 / thread.pitch).toBe(36);
  expect(readThread("0.7965-36 RMS").designation).toBe("0.8-36 RMS");
  expect(() => readThread("0.9-36 RMS")).toThrow(Unreadable);
});

// Thury by its rule: size 0 is 6 mm with a pitch of 1 mm, each pitch nine tenths of the one before; 47.5 degrees.
test("Thury is the thread that BA was made from", () => {
  const [zero, one] = [readThread("Thury 0"), readThread("Thury 1")];
  expect([zero.major, zero.pitch, one.major, one.pitch]).toEqual([6, 1, 5.3, 0.9]);
  expect(zero.loadFlank + zero.clearanceFlank).toBe(47.5);
  expect(zero.depth.external).toBeCloseTo(0.6, 9);
});

// An encyclopaedia on bicycle valves: 5V2 is 5.2 x 1.058 mm (24 threads per inch), 6V1 is 6 x 0.8 mm.
test("valve threads have the diameter and pitch that are in print", () => {
  near(readThread("5V2").major, 5.2, 0.05);
  near(readThread("5V2").pitch, 1.058, 0.0005);
  near(readThread("6v1").pitch, 0.8, 0.01);
  near(readThread("8V1").major, 7.7, 0.05);
});

// Plain threads under a trade's name: spark plugs, and the tripod screws of ISO 1222.
test.each(["M10x1", "M12x1.25", "M14x1.25", "M18x1.5", "1/4-20 UNC", "3/8-16 UNC"])(
  "%s of spark plugs and tripods is a tabled size",
  (text) => {
    expect(readThread(text).note).toBeUndefined();
  },
);

test.each([
  ["3/8-26 BSB", "no standard gives them any"],
  ["1/4-26 BSC", "BS 811"],
  ["1/4-20 NC", "classes 1 to 4"],
  ["S 48x8", "DIN 513-2"],
  ["Rd 40x1/6", "DIN 405-2"],
  ["Sq 1-4", "no standard gives them any"],
  ["1/2 NPT", "hand-tight plane"],
  ["Pg 16", "DIN 40430"],
])("that %s has no limits is answered with the reason", (text, reason) => {
  expect(() => readThread(text).limits()).toThrow(NothingFound);
  expect(() => readThread(text).limits()).toThrow(reason);
});

test.each([
  [26.45, 25.4 / 7, "E27"],
  [3.0686 * 25.4, 25.4 / 7.5, "2 1/2-7.5 NH"],
  [1.0625 * 25.4, 25.4 / 11.5, "3/4-11.5 NH"],
  [22.5, 25.4 / 18, "Pg 16"],
  [10, 1.4, "Lowenherz 10x1.4"],
  [0.797 * 25.4, 25.4 / 36, "0.8-36 RMS"],
  [40, 25.4 / 6, "Rd 40x1/6"],
])("a thread of %d mm and a pitch of %d mm is %s", (major, pitch, designation) => {
  expect(matchThread({ major, pitch, unit: "mm" }, 1)).toContain(designation);
});

// What no measurement tells apart stands once: a 10 mm thread of 1.5 mm pitch and 60 degrees is M10 whoever made it.
test("an old metric size that M has too is named M", () => {
  expect(matchThread({ major: 10, pitch: 1.5, unit: "mm", included: 60 }, 1)).toBe("M10");
  expect(matchThread({ major: 72, pitch: 6.5, unit: "mm", included: 60 }, 1)).toBe("SI 72x6.5");
});
