/**
 * The row (0 first) each label stands in, so that no two in a row come nearer than `gap`.
 * @param places ascending, in the unit of `gap`
 */
export function labelRows(places: readonly number[], gap: number): readonly number[] {
  const ends: number[] = [];
  return places.map((place) => {
    const free = ends.findIndex((end) => place - end >= gap);
    const row = free < 0 ? ends.length : free;
    ends[row] = place;
    return row;
  });
}
