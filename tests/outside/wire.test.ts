import { expect, test } from 'vitest';
import { ampacity, bundleAmpacity, chartFuse } from '../../src/physics/ampacity.ts';
import { largestFuse } from '../../src/physics/fuse.ts';
import {
	copperResistance,
	gaugeArea,
	inVehicle,
	longestRun,
	vehicleWireDrop,
	wireDrop,
} from '../../src/physics/wire.ts';
import { foot, inch, published } from './published.ts';

const diameter = (gauge: number) => Math.sqrt((4 / Math.PI) * gaugeArea(gauge));
const wireTable = 'wire gauge table after Floyd, Electric Circuit Fundamentals';

published({
	what: 'diameter in inches by gauge',
	source: wireTable,
	obtained: 'read',
	within: { rel: 5e-4, why: 'printed digits' },
	rows: [
		[22, 0.02535],
		[20, 0.03196],
		[18, 0.0403],
		[14, 0.06408],
		[12, 0.0808],
		[4, 0.20431],
		[2, 0.25763],
		[1, 0.2893],
		[0, 0.32485],
	],
	found: gauge => diameter(gauge!) / inch,
});

published({
	what: 'diameter in inches by gauge',
	source: 'GNU units 2.22: wiregauge()',
	obtained: 'computed',
	within: { rel: 1e-6, why: 'same relation' },
	rows: [
		[22, 0.0253465865547],
		[10, 0.101897115276],
		[0, 0.324860740243],
	],
	found: gauge => diameter(gauge!) / inch,
});

published({
	what: 'ohm a 1000 ft of solid copper at 20 degC by gauge',
	source: wireTable,
	obtained: 'read',
	within: { rel: 1e-3, why: 'printed digits, three of them at gauge 1' },
	rows: [
		[22, 16.14],
		[20, 10.15],
		[16, 4.016],
		[12, 1.588],
		[8, 0.6282],
		[6, 0.3951],
		[4, 0.2485],
		[2, 0.1563],
		[1, 0.124],
	],
	found: gauge => copperResistance(gaugeArea(gauge!), 1000 * foot),
});

published({
	what: 'resistance of copper over that at 20 degC by degC',
	source: 'FAA AC 43.13-1B CHG 1, par. 11-66: (234.5 + T) / 254.5',
	obtained: 'read',
	within: { rel: 5e-4, why: '0.00393 is 1/254.5 rounded' },
	rows: [
		[50, 1.11788],
		[105, 1.33399],
		[20, 1],
	],
	found: celsius => copperResistance(1e-6, 1, celsius! + 273.15) / copperResistance(1e-6, 1),
});

// The circular gives ohm a foot of its own (stranded, tinned) wire; the area of solid copper that has it checks the drop.
published({
	what: 'volts lost one way by ft, A, ohm a ft',
	source: 'FAA AC 43.13-1B CHG 1, Table 11-7',
	obtained: 'read',
	within: { rel: 0.015, why: 'the circular rounds to two or three digits' },
	rows: [
		[107, 20, 0.00044, 0.942],
		[90, 20, 0.00028, 0.504],
		[88, 20, 0.00202, 3.6],
		[100, 20, 0.00306, 6.12],
	],
	found: (run, current, ohm) => wireDrop(current!, (1e-6 / 58 / ohm!) * foot, run! * foot) / 2,
});

// Aircraft wire of a gauge has less copper than the gauge (9354 circular mils for 10380 at 10 gauge), and the column is the most
// that its maker may deliver, at 20 degC: about what a full gauge of stranded copper has when it is warm.
published({
	what: 'ohm a 1000 ft of wire in a vehicle by gauge, against the most of tinned aircraft wire',
	source: 'FAA AC 43.13-1B CHG 1, Table 11-9',
	obtained: 'read',
	within: { rel: 0.075, why: 'another copper section, cold, tinned and at its worst, against 60 degC' },
	rows: [
		[16, 4.81],
		[14, 3.06],
		[12, 2.02],
		[10, 1.26],
		[8, 0.7],
		[6, 0.44],
		[4, 0.28],
		[2, 0.18],
		[1, 0.15],
		[0, 0.12],
	],
	found: gauge => vehicleWireDrop(1, gaugeArea(gauge!), 1000 * foot) / 2,
});

published({
	what: 'ft of 10 gauge wire that lose V at A, one way',
	source: 'FAA AC 43.13-1B CHG 1, Table 11-8; solid copper at 20 degC has 350 ft in the last row',
	obtained: 'read',
	within: { rel: 0.09, why: 'read off a chart; 1.26 ohm a 1000 ft of its wire for 1.18 of ours' },
	rows: [
		[1, 20, 39],
		[0.5, 20, 19.5],
		[4, 20, 156],
		[7, 20, 273],
	],
	found: (volts, current) => volts! / (vehicleWireDrop(current!, gaugeArea(10), foot) / 2),
});

published({
	what: 'resistance of warm stranded wire over solid copper at 20 degC',
	source:
		'FAA AC 43.13-1B CHG 1, par. 11-66: (234.5 + T) / 254.5, at 60 degC; 2 % for the lay of the strands, common practice',
	obtained: 'read',
	within: { rel: 1e-3, why: '0.00393 is 1/254.5 rounded' },
	rows: [[(1.02 * 294.5) / 254.5]],
	found: () => vehicleWireDrop(1, 1e-6, 1) / wireDrop(1, 1e-6, 1),
});

test('a warm wire is one between cold and what its insulation stands', () => {
	expect(inVehicle.temperature).toBeGreaterThan(293.15);
	expect(inVehicle.temperature).toBeLessThan(378.15);
});

const allowable = [
	[18, 20],
	[16, 25],
	[14, 35],
	[12, 45],
	[10, 60],
	[8, 80],
	[6, 120],
	[4, 160],
	[3, 180],
	[2, 210],
	[1, 245],
	[0, 285],
	[-1, 330],
	[-2, 385],
	[-3, 445],
];

published({
	what: 'A allowed in 105 degC wire by gauge',
	source: '33 CFR 183.425, Table 5',
	obtained: 'read',
	within: { abs: 0, why: 'a table' },
	rows: allowable,
	found: gauge => ampacity(gaugeArea(gauge!))!,
});

published({
	what: 'A allowed in 105 degC wire in an engine space by gauge, which is the largest fuse',
	source: '33 CFR 183.425, Table 5 with note 1, as reprinted in a boat cable catalogue (Table E)',
	obtained: 'read',
	within: { abs: 0.51, why: 'the reprint rounds to whole ampere' },
	rows: [
		[18, 17],
		[16, 21],
		[14, 30],
		[12, 38],
		[10, 51],
		[8, 68],
		[6, 102],
		[4, 136],
		[2, 178],
		[1, 208],
		[0, 242],
		[-1, 280],
		[-2, 327],
		[-3, 378],
	],
	found: gauge => largestFuse(ampacity(gaugeArea(gauge!))!),
});

published({
	what: 'fuse in A by gauge',
	source: 'FAA AC 43.13-1B, Table 11-3',
	obtained: 'read',
	within: { abs: 0, why: 'a table' },
	rows: [
		[22, 5],
		[20, 5],
		[18, 10],
		[16, 10],
		[14, 15],
		[12, 20],
		[10, 30],
		[8, 50],
		[6, 70],
		[4, 70],
		[2, 100],
		[1, 150],
		[0, 150],
	],
	found: gauge => chartFuse(gaugeArea(gauge!))!,
});

test('every fuse of the cautious aircraft chart is one that the boat table allows in an engine space', () => {
	for (const [gauge] of allowable) {
		const fuse = chartFuse(gaugeArea(gauge!))!;
		expect(fuse).toBeLessThanOrEqual(largestFuse(ampacity(gaugeArea(gauge!))!));
	}
});

const circular = 'FAA AC 43.13-1B change 1';

published({
	what: 'longest wire in ft, there and back, by volts lost, 10 AWG, 20 A',
	source: `${circular}, Table 11-8: 1 V 39 ft, 0.5 V 19.5 ft, 4 V 156 ft, 7 V 273 ft`,
	obtained: 'read',
	within: {
		rel: 0.1,
		why: "the circular's tinned aircraft wire has a quarter more resistance than its copper; ours is reckoned warm",
	},
	rows: [
		[1, 39],
		[0.5, 19.5],
		[4, 156],
		[7, 273],
	],
	found: volts => (2 * longestRun(volts!, 20, gaugeArea(10))) / foot,
});

published({
	what: 'what a wire carries in a full bundle, A, by gauge',
	source: `${circular}, Table 11-9, 105 degC`,
	obtained: 'read',
	within: { abs: 0, why: 'the table itself' },
	rows: [
		[24, 2.5],
		[18, 6],
		[14, 10],
		[10, 17],
		[8, 38],
		[2, 95],
		[0, 128],
		[-3, 204],
	],
	found: gauge => bundleAmpacity(gaugeArea(gauge!))!,
});

test('in a bundle every wire carries less than in the open, and a metric one as the next smaller gauge', () => {
	for (const gauge of [18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3])
		expect(bundleAmpacity(gaugeArea(gauge))!).toBeLessThan(ampacity(gaugeArea(gauge))!);
	expect(bundleAmpacity(2.5e-6)).toBe(10);
	expect(bundleAmpacity(0.1e-6)).toBeUndefined();
});
