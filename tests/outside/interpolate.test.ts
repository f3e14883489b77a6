import { makeCurve } from '../../src/physics/interpolate.ts';
import { published } from './published.ts';

const library = 'SciPy 1.10.1: PchipInterpolator';
const digits = { rel: 1e-11, why: 'twelve printed digits of the same method' };

const meter = makeCurve([
	[0.6, 15],
	[1, 38],
	[1.5, 90],
	[2, 165],
	[3, 395],
	[4, 710],
	[4.6, 945],
	[5, 1130],
]);

published({
	what: 'air meter curve at V',
	source: library,
	obtained: 'computed',
	within: digits,
	rows: [
		[0.7, 19.2917311947],
		[0.9, 30.9751935841],
		[1.2, 55.6836892203],
		[1.7, 116.72752306],
		[2.5, 268.944626474],
		[3.3, 479.92442827],
		[3.9, 675.031669899],
		[4.2, 783.291085834],
		[4.9, 1081.48132971],
	],
	found: x => meter.at(x!),
});

const pump = makeCurve([
	[30, 80],
	[40, 75],
	[50, 69],
	[60, 61],
	[70, 50],
]);

published({
	what: 'pump curve at psi',
	source: library,
	obtained: 'computed',
	within: digits,
	rows: [
		[32, 79.0785454545],
		[38, 76.0741818182],
		[45, 72.1753246753],
		[57.3, 63.4025663759],
		[66, 54.7827368421],
		[69, 51.2371315789],
	],
	found: x => pump.at(x!),
});

const steps = makeCurve([
	[7.99, 0],
	[8.09, 2.76429e-5],
	[8.19, 4.37498e-2],
	[8.7, 0.169183],
	[9.2, 0.469428],
	[10, 0.94374],
	[12, 0.998636],
	[15, 0.999919],
	[20, 0.999994],
]);

published({
	what: 'the data of Fritsch & Carlson 1980 (set RPN 14)',
	source: library,
	obtained: 'computed',
	within: digits,
	rows: [
		[8, 2.76743386319e-7],
		[8.05, 9.9564741811e-6],
		[8.15, 0.0235282783658],
		[8.4, 0.0966688056077],
		[9, 0.337534326846],
		[9.6, 0.76024763934],
		[11, 0.986043362535],
		[13, 0.999361822092],
		[17, 0.999968025772],
		[19.9, 0.999993972792],
	],
	found: x => steps.at(x!),
});

const turning = makeCurve([
	[0, 1],
	[1, 3],
	[2, 3],
	[3.5, 2],
	[5, 4],
]);

published({
	what: 'a curve that rises, rests, falls and rises',
	source: library,
	obtained: 'computed',
	within: digits,
	rows: [
		[0.25, 1.734375],
		[0.5, 2.375],
		[1.5, 3],
		[2.5, 2.74074074074],
		[3, 2.25925925926],
		[4, 2.25925925926],
		[4.9, 3.77125925926],
	],
	found: x => turning.at(x!),
});

const bent = makeCurve([
	[0, 0],
	[1, 10],
	[2, 11],
]);
const turned = makeCurve([
	[0, 0],
	[1, 1],
	[2, -9],
]);

published({
	what: 'three points, a sharp bend (0) and a turn that steepens the end (1)',
	source: library,
	obtained: 'computed',
	within: { rel: 1e-8, why: 'nine printed digits' },
	rows: [
		[0, 0.25, 3.51633523],
		[0, 0.75, 8.86150568],
		[0, 1.5, 10.72727273],
		[1, 0.25, 0.578125],
		[1, 0.75, 0.984375],
		[1, 1.5, -2.0625],
	],
	found: (which, x) => (which === 1 ? turned : bent).at(x!),
});
