/**
 * The smallest few of many numbers, without sorting the many.
 *
 * Source: Hoare's selection: part the numbers at one of them, go on in the part that holds the boundary.
 */

/**
 * Moves the `count` smallest of `values` to its front, in any order, and gives that part. All of it when count is not
 * less than its length.
 */
export function smallestFirst(values: Float64Array, count: number): Float64Array {
  let [low, high] = [0, values.length - 1];
  while (low < high) {
    const middle = values[(low + high) >> 1]!;
    let [i, j] = [low, high];
    while (i <= j) {
      while (values[i]! < middle) i++;
      while (values[j]! > middle) j--;
      if (i > j) break;
      const held = values[i]!;
      values[i++] = values[j]!;
      values[j--] = held;
    }
    if (count - 1 <= j) high = j;
    else if (count - 1 >= i) low = i;
    else break;
  }
  return values.subarray(0, count);
}
