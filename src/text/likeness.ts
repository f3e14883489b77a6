/** Share of pairs of letters that two texts have in common (Dice's coefficient), 0 to 1. */
export function likeness(a: string, b: string): number {
	const [left, right] = [pairs(a), pairs(b)];
	let common = 0;
	for (const [pair, count] of left) common += Math.min(count, right.get(pair) ?? 0);
	return (2 * common) / (a.length + b.length + 2);
}

function pairs(text: string): Map<string, number> {
	const found = new Map<string, number>();
	const padded = ` ${text} `;
	for (let at = 0; at + 2 <= padded.length; at++) {
		const pair = padded.slice(at, at + 2);
		found.set(pair, (found.get(pair) ?? 0) + 1);
	}
	return found;
}

/** The names most like one that is not among them, the nearest first. */
export function nearest(name: string, names: readonly string[], most = 3): string[] {
	const wanted = name.toLowerCase();
	const ranked = names.map(each => [each, likeness(wanted, each.toLowerCase())] as const);
	return ranked
		.sort(([, a], [, b]) => b - a)
		.slice(0, most)
		.map(([each]) => each);
}
