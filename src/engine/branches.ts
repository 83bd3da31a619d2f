/**
 * IF that reckons only the branch it takes. The engine's own reckons both, so the branch not taken would leave its
 * note of doubt on the cell, and costs its time.
 */
import {
  FunctionPlugin,
  type FunctionPluginDefinition,
  HyperFormula,
  type ImplementedFunctions,
  SimpleRangeValue,
} from "hyperformula";

interface Call {
  readonly type: string;
  readonly args: readonly Call[];
}
interface State {
  readonly arraysFlag: boolean;
}
type Own = Record<string, (call: Call, state: State) => unknown>;

/** The engine's plugins, with IF replaced. */
export function pluginsWithBranches(): FunctionPluginDefinition[] {
  const all = HyperFormula.getAllFunctionPlugins();
  const original = all.find((plugin) => plugin.implementedFunctions.IF);
  const metadata = original?.implementedFunctions.IF;
  if (!original || !metadata) return all;

  class Branches extends FunctionPlugin {
    static override implementedFunctions: ImplementedFunctions = { IF: { ...metadata, method: "branch" } };
    private readonly whole = new original!(this.interpreter) as unknown as Own;

    branch(call: Call, state: State): unknown {
      const [condition, yes, no] = call.args;
      if (!state.arraysFlag && condition && yes && no && call.args.length === 3) {
        const reckon = (part: Call): unknown => this.evaluateAst(part as never, state as never);
        const given = reckon(condition);
        const taken = given ? yes : no;
        if ((typeof given === "boolean" || typeof given === "number") && taken.type !== "EMPTY") {
          const value = reckon(taken);
          if (!(value instanceof SimpleRangeValue)) return value;
        }
      }
      // Everything unusual: arrays, text for a condition, errors, left-out branches.
      return this.whole[metadata!.method]!(call, state);
    }
  }
  return [...all, Branches as unknown as FunctionPluginDefinition];
}
