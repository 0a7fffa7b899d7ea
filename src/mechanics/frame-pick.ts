// What stands at an index that has to exist?

/**
 * Entry of a list at an index that has to exist: list[index].
 *
 * @param list - entries [any]
 * @param index - place from 0 [count]
 * @param what - name of an entry in the refusal [text]
 * @returns the entry [any]
 * @throws RangeError naming the entry when the list has none there
 * Source: derived, look-up
 */
export function pick<T>(list: readonly T[], index: number, what = "entry"): T {
  const found = list[index];
  if (found === undefined) throw new RangeError(`there is no ${what} ${index}`);
  return found;
}
