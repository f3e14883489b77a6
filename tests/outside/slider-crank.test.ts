import { angleFigures, CrankAngle } from '../../src/physics/crank-angle.ts';
import { pistonDrop } from '../../src/physics/slider-crank.ts';
import { published } from './published.ts';

published({
	what: 'piston mm below top dead center by crank angle, stroke 90, rod 150 mm',
	source: 'root of the rod-length constraint, python3-scipy 1.10.1 brentq',
	obtained: 'computed',
	within: { abs: 1e-6, why: 'last printed digit' },
	rows: [
		[15, 1.9861856],
		[25, 5.4266256],
		[90, 51.90912],
		[130, 77.940234],
		[150, 85.668244],
		[180, 90],
	],
	found: angle => 1000 * pistonDrop(0.09, 0.15, angle!),
});

published({
	what: 'slider m from the crank centre by crank m, rod m, angle',
	source: 'inputs and formula of a slider-crank example 5.1, believed Nikravesh, Planar Multibody Dynamics; evaluated',
	obtained: 'computed',
	within: { rel: 1e-6, why: 'six printed digits' },
	rows: [[0.12, 0.26, 65, 0.286875]],
	found: (crank, rod, angle) => crank! + rod! - pistonDrop(2 * crank!, rod!, angle!),
});

published({
	what: 'deg after top at which the piston moves fastest, by rod over crank',
	source: 'root of the exact slider-crank acceleration',
	obtained: 'computed',
	within: { abs: 0.05, why: 'searched here in steps of 0.01 deg' },
	rows: [[3.333, 74.528]],
	found: rodOverCrank => {
		const angles = Array.from({ length: 9001 }, (_, i) => i / 100);
		const crank = new CrankAngle({ bore: 1, stroke: 2, rod: rodOverCrank!, ratio: 10 }, { start: 0, duration: 1 });
		const figures = angleFigures();
		const speeds = angles.map(angle => {
			crank.place(angle, figures);
			return figures[1]!;
		});
		return angles[speeds.indexOf(Math.max(...speeds))]!;
	},
});
