// Moving about in a table by keys, and the rectangle that is chosen in it: pure, so that they can be tried without a page.

/** A cell. */
export interface Spot {
  readonly row: number;
  readonly column: number;
}

/** Where the cursor is, and the other corner of what is chosen; the same spot when one cell is. */
export interface Choosing {
  readonly at: Spot;
  readonly from: Spot;
}

/** A rectangle of cells, both ends included. */
export interface Area {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export interface Size {
  readonly rows: number;
  readonly columns: number;
}

const within = (value: number, count: number): number => Math.min(Math.max(value, 0), Math.max(count - 1, 0));

/** A spot that is inside the table. */
export function spotWithin(spot: Spot, size: Size): Spot {
  return { row: within(spot.row, size.rows), column: within(spot.column, size.columns) };
}

/** The rectangle that is chosen. */
export function areaOf({ at, from }: Choosing): Area {
  return {
    top: Math.min(at.row, from.row),
    left: Math.min(at.column, from.column),
    bottom: Math.max(at.row, from.row),
    right: Math.max(at.column, from.column),
  };
}

/** Whether a spot lies in an area. */
export function isIn(area: Area, { row, column }: Spot): boolean {
  return row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;
}

/** A key with what was held down. */
export interface Key {
  readonly key: string;
  readonly shift: boolean;
  /** Ctrl, or Command on a Mac. */
  readonly ctrl: boolean;
}

/** Rows that Page Up and Page Down pass. */
const page = 10;

/**
 * Where a key leads; null for keys that do not move. Tab goes along the row and on to the next, and leaves the table at its
 * ends (null). Shift chooses up to there, except with Tab.
 */
export function moved(choosing: Choosing, key: Key, size: Size): Choosing | null {
  const { row, column } = choosing.at;
  const last: Spot = { row: size.rows - 1, column: size.columns - 1 };
  if (size.rows === 0 || size.columns === 0) return null;
  const to = ((): Spot | null => {
    switch (key.key) {
      case "ArrowUp":
        return { row: key.ctrl ? 0 : row - 1, column };
      case "ArrowDown":
        return { row: key.ctrl ? last.row : row + 1, column };
      case "ArrowLeft":
        return { row, column: key.ctrl ? 0 : column - 1 };
      case "ArrowRight":
        return { row, column: key.ctrl ? last.column : column + 1 };
      case "Home":
        return { row: key.ctrl ? 0 : row, column: 0 };
      case "End":
        return { row: key.ctrl ? last.row : row, column: last.column };
      case "PageUp":
        return { row: row - page, column };
      case "PageDown":
        return { row: row + page, column };
      case "Tab": {
        const index = row * size.columns + column + (key.shift ? -1 : 1);
        if (index < 0 || index >= size.rows * size.columns) return null;
        return { row: Math.floor(index / size.columns), column: index % size.columns };
      }
      default:
        return null;
    }
  })();
  if (to === null) return null;
  const at = spotWithin(to, size);
  return { at, from: key.shift && key.key !== "Tab" ? choosing.from : at };
}

/** All of a table. */
export function everything(size: Size): Choosing {
  return {
    from: { row: 0, column: 0 },
    at: spotWithin({ row: size.rows - 1, column: size.columns - 1 }, size),
  };
}

/**
 * Where pasted cells go: each with its spot. One cell pasted on a chosen rectangle fills it; else the cells go from the
 * rectangle's first corner on, and `grown` rows are needed beyond the table's end. `lost` counts the cells beyond the last
 * column that are not blank.
 */
export function placesFor<T>(
  cells: readonly (readonly T[])[],
  area: Area,
  size: Size,
): { placed: { spot: Spot; cell: T }[]; grown: number; lost: number } {
  const one = cells.length === 1 && cells[0].length === 1;
  const placed: { spot: Spot; cell: T }[] = [];
  if (one) {
    for (let row = area.top; row <= area.bottom; row++)
      for (let column = area.left; column <= area.right; column++)
        placed.push({ spot: { row, column }, cell: cells[0][0] });
    return { placed, grown: 0, lost: 0 };
  }
  let lost = 0;
  cells.forEach((row, i) => {
    row.forEach((cell, j) => {
      const spot = { row: area.top + i, column: area.left + j };
      if (spot.column < size.columns) placed.push({ spot, cell });
      else if (String(cell).trim() !== "") lost++;
    });
  });
  return { placed, grown: Math.max(0, area.top + cells.length - size.rows), lost };
}
