import { airbags } from './airbags.ts';
import * as halves from './halves.ts';
import * as meetings from './meetings.ts';
import type { Check } from './part.ts';
import * as through from './through.ts';
import * as wires from './wires.ts';

/** What rules may go through part by part, as `each: plugs.NAME`. */
export const checks: Readonly<Record<string, Check>> = {
	'plugs.airbags': airbags,
	'plugs.meetings': meetings.meetings,
	'plugs.moved': meetings.moved,
	'plugs.through': through.through,
	'plugs.unseen': through.unseen,
	'plugs.swapped': meetings.swapped,
	'plugs.open-ends': meetings.openEnds,
	'plugs.colors': meetings.colors,
	'plugs.returns': meetings.returns,
	'plugs.mirrored': meetings.mirrored,
	'plugs.twice-pins': halves.twicePins,
	'plugs.twice-circuits': halves.twiceCircuits,
	'plugs.recognised': halves.recognized,
	'plugs.splices': halves.splices,
	'plugs.shells': halves.shells,
	'plugs.locks': halves.locks,
	'plugs.seals': halves.seals,
	'plugs.thin': wires.thin,
	'plugs.unfused': wires.unfused,
	'plugs.over-fused': wires.overFused,
	'plugs.links': wires.links,
	'plugs.terminals': wires.terminals,
	'plugs.twisted': wires.twisted,
	'plugs.shields': wires.shields,
	'plugs.insulation': wires.insulation,
};

/** Checks that never find anything wrong: they say what cannot be decided. */
export const neverFails: readonly string[] = ['plugs.unseen'];

/** Checks of what stands on the paper: that is always there to be looked at. */
export const neverUnknown: readonly string[] = [
	'plugs.twice-pins',
	'plugs.twice-circuits',
	'plugs.locks',
	'plugs.seals',
	'plugs.thin',
	'plugs.twisted',
	'plugs.terminals',
];
