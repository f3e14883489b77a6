/**
 * A function that keeps its latest results by key: one answer changed leaves most of what is computed as it was. When `size`
 * results are kept, all are dropped. The function must be pure, and its key hold all that it reads.
 */
export function keepingRecent<In, Out>(compute: (input: In) => Out, key: (input: In) => string, size: number) {
	const results = new Map<string, Out>();
	return (input: In): Out => {
		const name = key(input);
		let result = results.get(name);
		if (result === undefined) {
			result = compute(input);
			if (results.size >= size) results.clear();
			results.set(name, result);
		}
		return result;
	};
}
