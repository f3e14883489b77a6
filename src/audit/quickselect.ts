/** The number that would stand at `rank` (0 the least) if the list were sorted; the list is put in another order. Hoare's selection: no full sort for two places of it. */
export function quickselect(list: Float64Array, rank: number): number {
	let [low, high] = [0, list.length - 1];
	while (low < high) {
		const pivot = list[(low + high) >> 1]!;
		let [up, down] = [low, high];
		while (up <= down) {
			while (list[up]! < pivot) up++;
			while (list[down]! > pivot) down--;
			if (up > down) break;
			const held = list[up]!;
			list[up++] = list[down]!;
			list[down--] = held;
		}
		if (rank <= down) high = down;
		else if (rank >= up) low = up;
		else break;
	}
	return list[rank]!;
}
