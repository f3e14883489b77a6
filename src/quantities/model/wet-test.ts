import { lowestCylinder, wetRecovery } from '../../physics/compression.ts';
import { percent, quantity } from '../quantity.ts';
import { noCompression } from './compression.ts';

export const recovery = quantity({
	id: 'engine.wet_recovery',
	label: 'recovery in the wet test',
	kind: 'list',
	inputs: ['engine.compression', 'engine.compression_wet'],
	formula: '(wet - dry) / (highest dry - dry), a cylinder each: near 1 the rings leak, near 0 a valve or the gasket',
	source: ['practice'],
	nature: 'exact',
	compute: q => {
		const dry = q.list<number | null>('engine.compression');
		const wet = q.list<number | null>('engine.compression_wet');
		return dry && wet && (noCompression(dry) ? null : wetRecovery(dry, wet));
	},
});

export const recoveryOfLowest = quantity({
	id: 'engine.wet_recovery_lowest',
	label: 'recovery of the lowest cylinder',
	shown: percent,
	kind: 'ratio',
	inputs: ['engine.compression', 'engine.compression_wet', 'engine.wet_recovery'],
	range: [null, null],
	formula: 'wet recovery of the cylinder that reads lowest dry; all alike: nothing to recover',
	source: ['practice'],
	nature: 'exact',
	compute: q => {
		const dry = q.list<number | null>('engine.compression');
		const wet = q.list<number | null>('engine.compression_wet');
		const recovered = q.list<number | null>('engine.wet_recovery');
		if (!dry || !wet || !recovered) return undefined;
		const at = lowestCylinder(dry);
		return wet[at] === null ? q.lack('engine.compression_wet') : recovered[at];
	},
});

export const gain = quantity({
	id: 'engine.wet_gain',
	label: 'gain of the wet test',
	shown: percent,
	kind: 'ratio',
	inputs: ['engine.compression', 'engine.compression_wet'],
	range: [-1, null],
	formula: 'wet / dry - 1 of the cylinder that reads lowest dry; a dead cylinder has none',
	source: ['practice'],
	nature: 'exact',
	compute: q => {
		const dry = q.list<number | null>('engine.compression');
		const wet = q.list<number | null>('engine.compression_wet');
		if (!dry || !wet) return undefined;
		const at = lowestCylinder(dry);
		const [before, after] = [dry[at]!, wet[at] ?? null];
		if (after === null) return q.lack('engine.compression_wet');
		return before > 0 ? after / before - 1 : null;
	},
});
