/**
 * Blocks that spill from one formula over several cells. The engine fixes their size when the formula is entered and
 * never again, and leaves a blocked one blocked: such formulas are entered again after the edit until nothing changes.
 */
import type { HyperFormula } from "hyperformula";
import type { Area } from "./cone.ts";
import type { Cell } from "./plugin.ts";

interface Block {
  readonly cell: Cell;
  readonly rows: number;
  readonly columns: number;
}

/** Two blocks can push each other about without end; nobody needs more rounds than this. */
const mostRounds = 12;

export class Spills {
  /** Room that our own blocks need, by cell. */
  private readonly wanted = new Map<string, Block>();
  /** Cells with a formula that fills several cells, blocked ones included. */
  private readonly anchors = new Map<string, { readonly cell: Cell; readonly formula: string }>();
  private readonly unsettled = new Map<string, Cell>();

  clear(): void {
    this.wanted.clear();
    this.anchors.clear();
    this.unsettled.clear();
  }

  /** The block in `cell` needs this room, and has it or not. */
  tell(cell: Cell, rows: number, columns: number, fits: boolean): void {
    this.wanted.set(keyOf(cell), { cell, rows, columns });
    if (!fits) this.unsettled.set(keyOf(cell), cell);
  }

  /** The contents of `cell` are about to change. */
  forget(cell: Cell): void {
    this.wanted.delete(keyOf(cell));
    this.anchors.delete(keyOf(cell));
    this.unsettled.delete(keyOf(cell));
  }

  /** A formula was put into `cell`; whether it spills shows when all is reckoned. */
  entered(cell: Cell, formula: string): void {
    this.anchors.set(keyOf(cell), { cell, formula });
  }

  /**
   * Enters formulas again until every block has the room it needs, or is really blocked.
   *
   * @returns the cells of the blocks that were entered again
   */
  settle(hf: HyperFormula): Cell[] {
    const entered: Cell[] = [];
    for (const [key, { cell }] of this.anchors) {
      if (hf.getCellType(cell) !== "ARRAYFORMULA" && !this.wanted.has(key)) this.anchors.delete(key);
    }
    for (const [key, { cell }] of this.anchors) if (isBlocked(hf, cell)) this.unsettled.set(key, cell);
    for (let round = 0; round < mostRounds && this.unsettled.size > 0; round++) {
      const again = [...this.unsettled.values()];
      this.unsettled.clear();
      for (const cell of again) {
        const anchor = this.anchors.get(keyOf(cell));
        if (!anchor) continue;
        hf.setCellContents(cell, anchor.formula);
        entered.push(...this.room(cell));
      }
    }
    this.unsettled.clear();
    return entered;
  }

  private room(cell: Cell): Cell[] {
    const { rows, columns } = this.wanted.get(keyOf(cell)) ?? { rows: 1, columns: 1 };
    return Array.from({ length: rows * columns }, (_, i) => ({
      sheet: cell.sheet,
      row: cell.row + Math.floor(i / columns),
      col: cell.col + (i % columns),
    }));
  }

  isAnchor(cell: Cell): boolean {
    return this.anchors.has(keyOf(cell));
  }

  /** Every block with the cells that it takes, or needs. */
  blocks(hf: HyperFormula): Area[] {
    return [...this.anchors.values()].map(({ cell }) => {
      const filled = blockAt(cell, hf);
      const { rows, columns } = this.wanted.get(keyOf(cell)) ?? {
        rows: filled?.height ?? 1,
        columns: filled?.width ?? 1,
      };
      const { sheet, row, col } = cell;
      return { sheet, top: row, left: col, bottom: row + rows - 1, right: col + columns - 1 };
    });
  }

  /** The areas that blocks really fill. */
  filled(hf: HyperFormula): Area[] {
    return [...this.anchors.values()].flatMap(({ cell }) => {
      const block = isBlocked(hf, cell) ? undefined : blockAt(cell, hf);
      const { sheet, row, col } = cell;
      return block
        ? [{ sheet, top: row, left: col, bottom: row + block.height - 1, right: col + block.width - 1 }]
        : [];
    });
  }

  /** What is said of a block without room. */
  blockedReason(cell: Cell, hf: HyperFormula, nameOf: (cell: Cell) => string): string | undefined {
    const room = this.wanted.get(keyOf(cell));
    if (!room) return undefined;
    const taken = this.inTheWay(cell, hf);
    return `needs ${room.rows} x ${room.columns} cells${taken ? `, but ${nameOf(taken)} is not empty` : ""}`;
  }

  /** The first cell that is in the way of the block in `cell`. */
  private inTheWay(cell: Cell, hf: HyperFormula): Cell | undefined {
    const block = this.wanted.get(keyOf(cell));
    if (!block) return undefined;
    for (let row = cell.row; row < cell.row + block.rows; row++) {
      for (let col = cell.col; col < cell.col + block.columns; col++) {
        const place = { sheet: cell.sheet, row, col };
        if ((row !== cell.row || col !== cell.col) && !hf.isCellEmpty(place)) return place;
      }
    }
    return undefined;
  }

  /** The cell whose formula fills `cell`, if another one does. */
  anchorOf(cell: Cell, hf: HyperFormula): Cell | undefined {
    if (hf.getCellType(cell) !== "ARRAY") return undefined;
    const corner = blockAt(cell, hf)?.leftCorner;
    return corner && { sheet: corner.sheet, row: corner.row, col: corner.col };
  }

  /** True when a blocked block may want cells of another one: which of them came first then decided who has them. */
  contested(hf: HyperFormula): boolean {
    const blocked = [...this.anchors.values()].filter(({ cell }) => isBlocked(hf, cell));
    if (blocked.length === 0) return false;
    const blocks = this.blocks(hf);
    return blocked.some(({ cell }) => {
      // The engine forgets how large a blocked array of its own is.
      const { rows, columns } = this.wanted.get(keyOf(cell)) ?? { rows: Infinity, columns: Infinity };
      return blocks.some(
        ({ sheet, top, left, bottom, right }) =>
          sheet === cell.sheet &&
          (top !== cell.row || left !== cell.col) &&
          bottom >= cell.row &&
          right >= cell.col &&
          top < cell.row + rows &&
          left < cell.col + columns,
      );
    });
  }
}

interface FilledBlock {
  readonly leftCorner: Cell;
  readonly width: number;
  readonly height: number;
}

/** The engine's own record of the block over a cell. */
function blockAt(cell: Cell, hf: HyperFormula): FilledBlock | undefined {
  const vertex: unknown = hf.dependencyGraph.getCell(cell);
  return typeof vertex === "object" && vertex !== null && "leftCorner" in vertex
    ? (vertex as FilledBlock)
    : undefined;
}

function isBlocked(hf: HyperFormula, cell: Cell): boolean {
  const value = hf.getCellValue(cell);
  return typeof value === "object" && value !== null && value.value === "#SPILL!";
}

function keyOf({ sheet, row, col }: Cell): string {
  return `${sheet},${row},${col}`;
}
