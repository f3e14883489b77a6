import { daysToFlat, stateOfCharge } from '../../src/physics/battery.ts';
import { published } from './published.ts';

published({
	what: 'state of charge in % by rested volts',
	source: 'the usual table of the trade for flooded batteries',
	obtained: 'memory',
	within: { abs: 1e-9, why: 'the table that is used' },
	rows: [
		[12.65, 100],
		[12.45, 75],
		[12.24, 50],
		[12.06, 25],
		[11.89, 0],
	],
	found: volts => 100 * stateOfCharge(volts!),
});

// Four other tables; 0.1 V between tables is up to 14 points on the steep side.
published({
	what: 'state of charge in % by rested volts',
	source:
		'four other published tables: 12.66 / 12.45 / 12.3 V at 100 / 75 / 50 %; 12.7 / 12.5 / 12.4 / 12.2 / 12.0 V at 100 / 80 / 70 / 50 / 30 %, the same by a battery seller down to 11.8 V at 10 %; a mailing-list post, 12.6 / 12.4 / 12.2 / 12.0 V at 100 / 75 / 50 / 25 %',
	obtained: 'read',
	within: { abs: 14.5, why: 'tables differ by 0.1 V' },
	rows: [
		[12.66, 100],
		[12.45, 75],
		[12.3, 50],
		[12.7, 100],
		[12.5, 80],
		[12.4, 70],
		[12.2, 50],
		[12.0, 30],
		[11.8, 10],
		[12.6, 100],
		[12.4, 75],
		[12.2, 50],
		[12.0, 25],
	],
	found: volts => 100 * stateOfCharge(volts!),
});

published({
	what: 'days to flat by Ah, mA, usable share',
	source: 'arithmetic',
	obtained: 'computed',
	within: { rel: 1e-9, why: 'arithmetic' },
	rows: [
		[60, 25, 0.5, 50],
		[60, 50, 0.5, 25],
		[48, 100, 0.4, 8],
	],
	found: (capacity, draw, usable) => daysToFlat(capacity! * 3600, draw! / 1000, usable!),
});

published({
	what: 'days until no start by reserve minutes, mA',
	source:
		'factory service bulletin as quoted: ampere-hours are 0.6 x reserve minutes, 40 % of them gone is no start at 25 degC; the days by hand',
	obtained: 'read',
	within: { rel: 1e-9, why: 'arithmetic' },
	rows: [
		[100, 50, 20],
		[100, 30, 100 / 3],
		[120, 25, 48],
	],
	found: (minutes, draw) => daysToFlat(0.6 * minutes! * 3600, draw! / 1000, 0.4),
});

published({
	what: 'Ah used when a car will no longer start, by Ah of the battery, at the usual share',
	source: 'the same bulletin: 20 to 30 Ah for a typical battery in storage',
	obtained: 'read',
	within: { abs: 5, why: 'the bulletin gives a range' },
	rows: [
		[45, 25],
		[50, 25],
		[60, 25],
	],
	found: capacity => daysToFlat(capacity! * 3600, 1) * 24,
});
