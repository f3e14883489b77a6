/** How many lines a row of a list has: one that is too long for its line is wrapped. */
export const heightOf = (item: string): number => item.split('\n').length;

export const linesIn = (items: readonly string[]): number => items.reduce((sum, item) => sum + heightOf(item), 0);

/**
 * The rows of a list that fit in `room` lines, the one under the cursor among them: as much above it as below where there is as
 * much, and none cut off, but for one that is alone longer than the room.
 */
export function windowOn(
	items: readonly string[],
	cursor: number,
	room: number,
): { readonly from: number; readonly shown: number } {
	if (items.length === 0) return { from: 0, shown: 0 };
	const at = Math.max(0, Math.min(items.length - 1, cursor));
	let from = at;
	let end = at + 1;
	let left = room - heightOf(items[at]!);
	const grow = (least: number) => {
		for (; from > 0 && left - heightOf(items[from - 1]!) >= least; from--) left -= heightOf(items[from - 1]!);
	};
	// Half of the room belongs to what is above, what is not needed there to what is below, and the other way round.
	grow(room - heightOf(items[at]!) - Math.floor(room / 2));
	for (; end < items.length && heightOf(items[end]!) <= left; end++) left -= heightOf(items[end]!);
	grow(0);
	return { from, shown: end - from };
}
