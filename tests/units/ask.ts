import type { Kind } from '../../src/units/kinds.ts';
import { unitNamed } from '../../src/units/names.ts';
import { type Asked, readNumber } from '../../src/units/read.ts';

/** A question for one kind, shown in the unit named. */
export function ask(kind: Kind, shown: string): Asked {
	return { kinds: [kind], shown: unit(kind, shown) };
}

export function unit(kind: Kind, symbol: string) {
	const found = unitNamed(symbol, [kind]);
	if (!found) throw new Error(`no ${kind} in ${symbol}`);
	return found;
}

/** What was read, as `number symbol`; else the problem. */
export function heard(text: string, asked: Asked): string {
	const reading = readNumber(text, asked);
	return reading.ok ? `${reading.typed} ${reading.unit.symbol}`.trim() : reading.problem;
}
