import { clutchTorque, engineSpeedAt, shaftCriticalSpeed, shaftTurns } from '../../src/physics/driveline.ts';
import { inch, mile, published } from './published.ts';

published({
	what: 'clutch torque in N m by N, friction, outer mm, inner mm (diameters), faces',
	source:
		'machine-design textbook companion, chapter 11, examples 11.1 (uniform wear), 11.6 (automotive, bedded: 2.142 x 250 N m) and 11.8',
	obtained: 'read',
	within: { rel: 1e-6, why: 'printed digits' },
	rows: [
		[15707.963, 0.2, 200, 100, 1, 235.619449],
		[7200, 0.35, 250, 175, 2, 535.5],
		[2650.718801, 0.1, 150, 75, 8, 119.282346066],
	],
	found: (clampForce, friction, outer, inner, faces) =>
		clutchTorque({
			clampForce: clampForce!,
			friction: friction!,
			outerRadius: outer! / 2000,
			innerRadius: inner! / 2000,
			faces: faces!,
		}),
});

published({
	what: 'clutch torque in N m by N, friction, outer mm, inner mm (radii), faces',
	source: 'farm machinery exam question on a multi-plate clutch, uniform wear',
	obtained: 'read',
	within: { abs: 0.05, why: 'last printed digit' },
	rows: [[3500, 0.35, 120, 80, 4, 490]],
	found: (clampForce, friction, outer, inner, faces) =>
		clutchTorque({
			clampForce: clampForce!,
			friction: friction!,
			outerRadius: outer! / 1000,
			innerRadius: inner! / 1000,
			faces: faces!,
		}),
});

/** 9.87 sqrt(E I / (rho A L^4)) in rpm, with the area and its moment worked out from the radii. */
const thomson = (length: number, outer: number, inner: number) => {
	const moment = (Math.PI / 64) * (outer ** 4 - inner ** 4);
	const area = (Math.PI / 4) * (outer ** 2 - inner ** 2);
	return (9.87 * Math.sqrt((205e9 * moment) / (7850 * area * length ** 4)) * 60) / (2 * Math.PI);
};

published({
	what: 'critical speed in rpm by length, diameter, wall in inches',
	source: 'Thomson, Theory of Vibration, Table 9.5-1: 9.87 for a simply supported beam; evaluated here',
	obtained: 'read',
	within: { rel: 1e-4, why: 'pi squared to three digits' },
	rows: [
		[48, 3, 0.083, thomson(48 * inch, 3 * inch, (3 - 0.166) * inch)],
		[54, 3.5, 0.095, thomson(54 * inch, 3.5 * inch, (3.5 - 0.19) * inch)],
		[60, 2.5, 1.25, thomson(60 * inch, 2.5 * inch, 0)],
	],
	found: (length, diameter, wall) => shaftCriticalSpeed(length! * inch, diameter! * inch, wall! * inch),
});

published({
	what: 'engine rpm by mph, axle ratio, top gear, tyre diameter in inches',
	source: 'trade rule: mph x 336 x axle x gear / tyre diameter',
	obtained: 'memory',
	within: { rel: 5e-4, why: '336 is 336.13 rounded' },
	rows: [
		[65, 3.73, 0.68, 26, (65 * 336 * 3.73 * 0.68) / 26],
		[70, 3.55, 1, 26, (70 * 336 * 3.55) / 26],
		[65, 3.08, 1, 28, (65 * 336 * 3.08) / 28],
	],
	found: (speed, axle, gear, tyre) => engineSpeedAt((speed! * mile) / 3600, gear!, shaftTurns(axle!, tyre! * inch)),
});
