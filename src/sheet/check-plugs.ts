import { isObject } from './fault.ts';
import { type Field, halfFields, mostHalves, mostPins, neededOfHalf, neededOfPin, pinFields } from './plug-fields.ts';
import { type SheetProblem, shown } from './problem.ts';

/** What is wrong with the plugs of a sheet, each with its place. */
export function* plugProblems(plugs: unknown): Generator<SheetProblem> {
	if (!Array.isArray(plugs) || plugs.length > mostHalves) {
		yield { path: 'plugs', found: shown(plugs), accepted: `a list of halves of plugs, at most ${mostHalves}` };
		return;
	}
	const seen = new Map<string, number>();
	for (const [at, half] of plugs.entries()) {
		const path = `plugs[${at}]`;
		yield* fieldProblems(half, path, halfFields, neededOfHalf, 'a half of a plug');
		if (!isObject(half)) continue;
		const name = JSON.stringify([nameKey(half.plug), half.half]);
		const before = seen.get(name);
		if (before !== undefined)
			yield {
				path,
				found: `the ${shown(half.half)} half of ${shown(half.plug)} again, as in plugs[${before}]`,
				accepted: 'each half of a plug once',
			};
		else seen.set(name, at);
		if (Array.isArray(half.pins))
			for (const [index, pin] of half.pins.slice(0, mostPins).entries())
				yield* fieldProblems(
					pin,
					`${path}.pins[${index}]`,
					pinFields,
					neededOfPin,
					'a pin, like {"pin": "14", "circuit": "coolant temperature"}',
				);
	}
}

/** Names of plugs are the same whatever the case and the spaces around. */
const nameKey = (name: unknown) => (typeof name === 'string' ? name.trim().toLowerCase() : name);

function* fieldProblems(
	value: unknown,
	path: string,
	fields: Readonly<Record<string, Field>>,
	needed: readonly string[],
	what: string,
): Generator<SheetProblem> {
	if (!isObject(value)) {
		yield { path, found: shown(value), accepted: what };
		return;
	}
	for (const key of needed)
		if (!Object.hasOwn(value, key)) yield { path: `${path}.${key}`, found: 'nothing', accepted: fields[key]!.accepted };
	for (const key of Object.keys(value)) {
		const field = Object.hasOwn(fields, key) ? fields[key] : undefined;
		if (!field) yield { path: `${path}.${key}`, found: shown(key), accepted: `only ${Object.keys(fields).join(', ')}` };
		else if (!field.fits(value[key]))
			yield { path: `${path}.${key}`, found: shown(value[key]), accepted: field.accepted };
	}
}
