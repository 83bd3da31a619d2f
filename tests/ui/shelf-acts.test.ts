import { expect, test } from "vitest";
import type { PageActs } from "../../src/ui/page-acts.ts";
import { ShelfActs } from "../../src/ui/shelf-acts.ts";

test("a deletion that cannot be taken back, since another tab had deleted the job before, is not passed over", async () => {
  const said: string[] = [];
  const restored: unknown[] = [];
  const keep = {
    remove: async () => undefined,
    restore: async (record: unknown) => restored.push(record),
    list: async () => [],
  };
  const parts = { desk: { keep }, element: () => null, draw: async () => undefined };
  const attempt = (run: () => Promise<unknown>) =>
    run().catch((error: Error) => {
      said.push(error.message);
    });
  const acts = new ShelfActs({ parts, attempt } as unknown as PageActs);
  await acts.did({ act: "remove", id: "one" });
  expect(said).toEqual([]);
  await acts.did({ act: "restore", id: "one" });
  expect(said).toEqual(["another tab had deleted this job before: take that back there"]);
  expect(restored).toEqual([]);
});
