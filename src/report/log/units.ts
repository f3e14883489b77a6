import type { LogReport } from '../../audit/log-report.ts';
import type { Channel } from '../../log/channel.ts';
import type { Kind } from '../../units/kinds.ts';
import { unitNamed } from '../../units/names.ts';
import { shownUnit } from '../../units/shown.ts';
import { fromCanonical, type Unit } from '../../units/unit.ts';
import { write } from '../../units/write.ts';

/** Units of the trade for a car on the road, where they are not those of a workshop. */
const onTheRoad: Partial<Record<Kind, readonly [us: string, metric: string]>> = {
	velocity: ['mph', 'km/h'],
	'mass-flow': ['lb/min', 'g/s'],
};

/** A channel's readings in the person's units. */
export interface Written {
	of(kept: number): number;
	show(kept: number): string;
}

/** How readings of a channel or figure are written for the person of a report. */
export function writtenIn({ wording, model }: LogReport, id: string): Written {
	const channel = model.rulebook.channels.find(channel => channel.id === id);
	const unit = channel && unitOf(channel, wording.units);
	if (!unit) return { of: kept => kept, show: kept => String(Number(kept.toPrecision(3))) };
	return { of: kept => fromCanonical(kept, unit), show: kept => write(kept, unit) };
}

function unitOf({ kind, special }: Channel, set: 'us' | 'metric'): Unit {
	const names = onTheRoad[kind];
	if (names) return unitNamed(names[set === 'us' ? 0 : 1], [kind])!;
	return kind === 'ratio' && special !== 'lambda' ? unitNamed('%', ['ratio'])! : shownUnit(kind, set);
}
