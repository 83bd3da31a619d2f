/** The command line: `npm run -s reckon -- --job FILE --get NAME =FORMULA`. */
import { readFileSync } from "node:fs";
import { reckon } from "./job/reckoning.ts";

const { out, err, status } = await reckon(process.argv.slice(2), (path) => readFileSync(path, "utf8"));
process.stdout.write(out);
process.stderr.write(err);
// Not process.exit(): that would cut off what a slow pipe has not taken yet.
process.exitCode = status;
