import { coolantShare, heatToCoolant } from '../../src/physics/cooling.ts';
import { published } from './published.ts';

published({
	what: 'share of the fuel energy to the coolant: inside Heywood 17 to 26 %',
	source: 'Heywood, Internal Combustion Engine Fundamentals, Table 12.1, at maximum power',
	obtained: 'memory',
	within: { abs: 0.045, why: 'the table gives a range' },
	rows: [[0.215]],
	found: () => coolantShare.usual,
});

published({
	what: 'share of the fuel energy to the coolant: the middles of two more published ranges',
	source:
		'Pulkrabek, Engineering Fundamentals of the IC Engine, ch. 10: 10 to 30 %; Stone, full load, petrol: 20 to 30 %',
	obtained: 'memory',
	within: { abs: 0.05, why: 'half of the narrower range' },
	rows: [[0.2], [0.25]],
	found: () => coolantShare.usual,
});

published({
	what: 'lowest and highest share: the ends of the band',
	source: 'Heywood, Table 12.1, at maximum power: from 17 %; Stone, full load, and Pulkrabek: to 30 %',
	obtained: 'memory',
	within: { abs: 1e-9, why: 'the tables that are used' },
	rows: [
		[0, 0.17],
		[1, 0.3],
	],
	found: end => (end === 0 ? coolantShare.low : coolantShare.high),
});

published({
	what: 'heat to coolant in kW by fuel g/s, MJ/kg, share',
	source: 'definition, worked by hand',
	obtained: 'computed',
	within: { rel: 1e-12, why: 'arithmetic' },
	rows: [
		[20, 43.5, 0.2, 174],
		[10, 44, 0.25, 110],
		[25, 30, 0.2, 150],
	],
	found: (fuel, heating, share) => heatToCoolant(fuel! / 1000, heating! * 1e6, share!) / 1000,
});
