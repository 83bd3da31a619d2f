/** "12,345": a count with its thousands apart. The browser's own way takes 10 ms to come the first time. */
export function grouped(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ",");
}
