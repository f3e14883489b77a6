import { bypassShare, orificeFlow } from '../../src/physics/wastegate.ts';
import { inch, poundForce, poundMass, published } from './published.ts';

const air = { gamma: 1.4, gasConstant: 287.05 };

published({
	what: 'choked flow of air in lb/s by psia, sq in, degR, ideal nozzle',
	source: "Fliegner's formula, 0.532 p A / sqrt(T), as compressible-flow texts have it",
	obtained: 'memory',
	within: { rel: 2e-3, why: 'three figures of the constant' },
	rows: [
		[100, 1, 530, (0.532 * 100) / Math.sqrt(530)],
		[50, 2.5, 600, (0.532 * 50 * 2.5) / Math.sqrt(600)],
	],
	found: (pressure, area, temperature) => {
		const before = (pressure! * poundForce) / inch ** 2;
		return orificeFlow(area! * inch ** 2, before, before / 4, (temperature! * 5) / 9, air, 1) / poundMass;
	},
});

published({
	what: 'flow through a hole at a small difference of pressure, kg/s by mm, kPa before, kPa across, K',
	source: 'Bernoulli, A sqrt(2 rho dp): what any orifice comes to at low speed',
	obtained: 'computed',
	within: { rel: 0.01, why: 'compressibility left out' },
	rows: [[40, 150, 1, 300, (Math.PI / 4) * 0.04 ** 2 * Math.sqrt((2 * 150e3 * 1e3) / (287.05 * 300))]],
	found: (bore, before, across, temperature) =>
		orificeFlow((Math.PI / 4) * (bore! / 1000) ** 2, before! * 1e3, (before! - across!) * 1e3, temperature!, air, 1),
});

published({
	what: 'wastegate bore in mm that holds 8 psi on a V8 of 0.38 kg/s, 62 K across the compressor',
	source: 'common practice: gates of 38 to 46 mm hold 8 psi on street V8s of 400 to 500 hp',
	obtained: 'memory',
	within: { abs: 4, why: 'the range of practice' },
	rows: [[0.38, 62, 42]],
	found: (flow, warming) => {
		const [before, behind, temperature] = [182e3, 110e3, 1150];
		const share = bypassShare(warming!, { before, behind, temperature, efficiency: 0.7 });
		const needed = (share * 1.07 * flow!) / orificeFlow(1, before, behind, temperature);
		return Math.sqrt((4 * needed) / Math.PI) * 1000;
	},
});
