import { type Declared, declaredKinds } from '../../log/declared.ts';
import type { Kind } from '../../units/kinds.ts';
import { readConstant } from './constant.ts';
import type { Fields } from './fields.ts';

/** By what an episode of a log is known (rules/episodes.yaml): every figure that `declaredKinds` names, with its unit. */
export function readEpisodes(root: Fields): Declared {
	const outer = root.inner('episodes');
	const groups = Object.entries<Readonly<Record<string, Kind>>>(declaredKinds).map(([group, kinds]) => {
		const inner = outer?.inner(group);
		const figures = Object.entries(kinds).map(([name, kind]) => {
			const placed = inner?.placed(name);
			const constant = inner && placed && readConstant(inner.source, placed, [kind]);
			return [name, constant?.value ?? 0] as const;
		});
		inner?.refuseRest();
		return [group, Object.fromEntries(figures)] as const;
	});
	outer?.refuseRest();
	return Object.fromEntries(groups) as Declared;
}
