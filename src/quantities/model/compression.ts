import { compressionSpread, crankingExponent, crankingPressure, type Readings } from '../../physics/compression.ts';
import { type BankLayout, layoutFromOrder, lowNeighbors } from '../../physics/firing-order.ts';
import { percent, quantity } from '../quantity.ts';

const measuredIn = (readings: Readings): number[] => readings.filter(reading => reading !== null);

/** No cylinder has any compression: a broken cam drive, or a failed test. There is no highest cylinder to compare with. */
export const noCompression = (readings: Readings): boolean => measuredIn(readings).every(reading => reading === 0);

const cranking = {
	kind: 'pressure',
	inputs: ['air.ambient_pressure', 'engine.effective_compression_ratio'],
	source: ['practice'],
	nature: 'estimate',
} as const;

export const expected = quantity({
	...cranking,
	id: 'engine.cranking_pressure_expected',
	label: 'expected cranking pressure',
	formula: 'ambient x effective ratio^1.25 - ambient, band 1.20-1.30',
	// What exponents of 1.20 and 1.30 make of it at an effective ratio near 7.
	band: [0.9, 1.11],
	compute: q => crankingPressure(q.number('air.ambient_pressure'), q.number('engine.effective_compression_ratio')),
});

export const expectedLow = quantity({
	...cranking,
	id: 'engine.cranking_pressure_low',
	label: 'low end of the cranking pressure',
	formula: 'ambient x effective ratio^1.20 - ambient: the low end of the band',
	compute: q =>
		crankingPressure(
			q.number('air.ambient_pressure'),
			q.number('engine.effective_compression_ratio'),
			crankingExponent.low,
		),
});

export const spread = quantity({
	id: 'engine.compression_spread',
	label: 'compression, lowest to highest',
	shown: percent,
	kind: 'ratio',
	inputs: ['engine.compression'],
	range: [0, 1],
	formula: 'lowest / highest; nothing to compare where all read 0',
	source: ['service-manuals'],
	nature: 'exact',
	compute: q => {
		const readings = q.list<number | null>('engine.compression');
		return readings && (noCompression(readings) ? null : compressionSpread(readings));
	},
});

export const lowUnder = quantity({
	id: 'engine.compression_low_under',
	label: 'low compression begins under',
	shown: percent,
	kind: 'ratio',
	inputs: [],
	range: [0, 1],
	formula: '75 % of the highest reading: the published mark',
	source: ['service-manuals'],
	nature: 'exact',
	compute: () => 0.75,
});

export const highest = quantity({
	id: 'engine.compression_highest',
	label: 'highest compression',
	kind: 'pressure',
	inputs: ['engine.compression'],
	formula: 'the highest reading',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const readings = q.list<number | null>('engine.compression');
		return readings && Math.max(...measuredIn(readings));
	},
});

export const lowest = quantity({
	id: 'engine.compression_lowest',
	label: 'lowest compression',
	kind: 'pressure',
	inputs: ['engine.compression'],
	formula: 'the lowest reading',
	source: ['definition'],
	nature: 'exact',
	compute: q => {
		const readings = q.list<number | null>('engine.compression');
		return readings && Math.min(...measuredIn(readings));
	},
});

export const layout = quantity({
	id: 'engine.banks',
	label: 'banks',
	kind: 'hidden',
	inputs: ['engine.bank_layout', 'engine.firing_order'],
	formula: 'the layout as answered, else as the firing order gives it away',
	source: ['practice'],
	nature: 'exact',
	compute: q => {
		if (q.has('engine.bank_layout')) return q.choice('engine.bank_layout');
		if (!q.has('engine.firing_order')) return q.lack('engine.bank_layout');
		return layoutFromOrder(q.list<number>('engine.firing_order')!) ?? q.lack('engine.bank_layout');
	},
});

export const neighbours = quantity({
	id: 'engine.compression_neighbours',
	label: 'neighboring low cylinders',
	kind: 'list',
	inputs: ['engine.compression', 'engine.banks', 'engine.compression_low_under'],
	formula: 'neighbors in a bank, both low against the highest; banks from the layout, else from the firing order',
	source: ['practice'],
	nature: 'exact',
	compute: q => {
		const readings = q.list<number | null>('engine.compression');
		// It compares two banks of one length.
		if (readings && (readings.length % 2 === 1 || noCompression(readings))) return null;
		const layout = q.made<BankLayout>('engine.banks');
		return readings && layout && lowNeighbors(readings, layout, q.number('engine.compression_low_under'));
	},
});

export const leakdownSpread = quantity({
	id: 'engine.leakdown_spread',
	label: 'leak-down spread',
	kind: 'ratio',
	inputs: ['engine.leakdown'],
	range: [0, 1],
	formula: 'highest leak - lowest leak',
	source: ['practice'],
	nature: 'exact',
	compute: q => {
		const leaks = q.list<number | null>('engine.leakdown');
		return leaks && Math.max(...measuredIn(leaks)) - Math.min(...measuredIn(leaks));
	},
});
