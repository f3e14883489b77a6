import { readGauge, writeGauge } from '../sheet/gauge.ts';
import type { ReadHalf, ReadPin } from './half.ts';
import type { Answered } from './reading.ts';
import type { Act, Row } from './rows.ts';
import { type Wire, wireOf } from './wire-size.ts';

/** How a wire's length and size are written, in the person's units. */
export interface Sizes {
	length(m: number): string;
	gauge(awg: number): string;
}

/** The wire that a row adds. */
export const addedWire = ({ added }: Row, answered: Answered): Wire | null =>
	added ? (wireOf(added, answered) ?? null) : null;

/** What to do at a row, in words. */
export function remedy(row: Row, answered: Answered, sizes: Sizes): string {
	if (row.acts.length === 0) return 'nothing';
	return row.acts.map(act => words(act, row, answered, sizes)).join('; ');
}

function words({ side, kind, pin }: Act, row: Row, answered: Answered, sizes: Sizes): string {
	const half = side === 'left' ? row.pair.left.half : row.pair.right.half;
	const other = side === 'right' && row.pair.by === 'pin' ? ` the ${half}'s wire` : '';
	switch (kind) {
		case 'join':
			return 'join as is';
		case 'done':
			return 'done';
		case 'move':
			return `move to pin ${pin}`;
		case 'splice':
			return row.pair.by === 'circuit' ? `splice to ${pin}` : `splice to pin ${pin}`;
		case 'insulate':
			return `insulate${other} and tie back`;
		case 'add': {
			const wire = addedWire(row, answered);
			const size = wire ? `${sizes.gauge(wire.gauge)}, ${sizes.length(wire.length)}` : 'a wire thicker than 4/0';
			return `add ${size}${wire?.fuse ? `, fuse ${wire.fuse} A` : ''} on the ${half}'s half`;
		}
		case 'takes':
			return `takes the wire from pin ${pin}`;
		case 'find-out':
			return 'find out';
		case 'leave-alone':
			return 'leave alone';
	}
}

/** A pin in words: its wire and what it carries. */
export function pinWords(pin: ReadPin | null, half: ReadHalf): string {
	if (pin === null) return `the ${half.half}'s half: not listed`;
	const { recognized, circuit, raw } = pin;
	const carries =
		circuit?.title ??
		(recognized.is === 'empty'
			? 'empty'
			: recognized.is === 'spare'
				? 'a spare wire'
				: recognized.is === 'blank'
					? 'not known'
					: `"${raw.circuit?.trim()}"`);
	const gauge = readGauge(raw.gauge);
	const size = gauge ? writeGauge(gauge) : '';
	return `the ${half.half}'s half: ${[raw.wire?.trim(), size, carries].filter(Boolean).join(', ')}`;
}
