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
