import { makeCurve } from '../../src/physics/interpolate.ts';
import { pumpFromCurve, pumpFromPoint } from '../../src/physics/pump.ts';
import { psi, published } from './published.ts';

const slow = makeCurve([
	[0, 120],
	[10, 80],
	[15, 50],
]);

published({
	what: 'affinity laws: flow by metres of head, speed ratio, for a pump that gives 80 L/s at 10 m',
	source:
		'trade article, a pump at 8 pole speed taken to 4 pole speed (flow x 2, head x 4); +10 % speed: +10 % flow, +21 % head',
	obtained: 'read',
	within: { rel: 1e-12, why: 'exact relation' },
	rows: [
		[10, 1, 80],
		[40, 2, 160],
		[12.1, 1.1, 88],
	],
	found: (head, ratio) => pumpFromCurve(slow, ratio!)(head!)!,
});

published({
	what: 'one point: flow by rated psi, psi, voltage ratio, for a pump rated 100',
	source: 'the rule as stated (x r^2, 0.8 % of rated flow a psi over rated pressure), worked by hand',
	obtained: 'computed',
	within: { rel: 1e-12, why: 'arithmetic' },
	rows: [
		[43.5, 43.5, 1, 100],
		[43.5, 20, 1, 100],
		[43.5, 53.5, 1, 92],
		[40, 60, 0.9, 65],
		[40, 300, 1, 0],
	],
	found: (rated, at, ratio) => pumpFromPoint({ flow: 100, pressure: rated! * psi }, ratio!)(at! * psi)!,
});

// By another way: a curve that falls as one point is taken to fall, at another speed by the affinity laws, Q = r Qc(p / r^2).
const fall = 0.008;
const straight = makeCurve([
	[0, 100 * (1 + fall * 43.5)],
	[43.5, 100],
	[60, 100 * (1 - fall * 16.5)],
]);

published({
	what: 'power of the voltage that flow goes with at 43.5 psi, by voltage ratio, for 0.8 % a psi',
	source: 'affinity laws on a straight curve: 1 + 2 x 0.008 x 43.5 for small changes',
	obtained: 'computed',
	within: { abs: 0.3, why: 'the rule takes 2, spread 1.5 to 2.5' },
	rows: [
		[0.95, 2],
		[0.9, 2],
	],
	found: ratio => Math.log(pumpFromCurve(straight, ratio!)(43.5)! / 100) / Math.log(ratio!),
});
