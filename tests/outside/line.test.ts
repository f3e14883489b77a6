import { frictionFactor, reynolds } from '../../src/physics/friction.ts';
import { contractionLoss, drawnTubing, elbowLoss, expansionLoss, type Line, lineLoss } from '../../src/physics/line.ts';
import { pipeVelocity } from '../../src/physics/pipe.ts';
import { foot, published } from './published.ts';

published({
	what: 'laminar friction factor by Reynolds number',
	source: '64/Re; python3-fluids 1.0.22: friction_factor(Re)',
	obtained: 'computed',
	within: { rel: 1e-9, why: 'closed form' },
	rows: [
		[500, 0.128],
		[1000, 0.064],
		[2000, 0.032],
	],
	found: re => frictionFactor(re!, 0),
});

published({
	what: 'Colebrook friction factor by Reynolds number, relative roughness',
	source: 'python3-fluids 1.0.22: Colebrook(Re, eD)',
	obtained: 'computed',
	within: { rel: 3e-7, why: 'printed digits' },
	rows: [
		[1e4, 0, 0.03088295],
		[1e4, 0.001, 0.03238181],
		[1e5, 0, 0.01798977],
		[1e5, 0.0001, 0.01851387],
		[1e5, 0.01, 0.03850354],
		[1e6, 0.0001, 0.01344144],
		[1e7, 0.001, 0.01966705],
	],
	found: (re, rough) => frictionFactor(re!, rough!),
});

published({
	what: 'Colebrook friction factor to all digits',
	source: 'python3-fluids 1.0.22: Colebrook(Re, eD); the third is printed in its documentation',
	obtained: 'computed',
	within: { rel: 2e-12, why: 'both are solved, not fitted' },
	rows: [
		[4000, 0, 0.0399070140556],
		[4000, 0.0001948051948051948, 0.0401043537795],
		[1e5, 0.0001, 0.018513866077471],
		[6000, 0.0002, 0.0357452618886],
		[15000, 0.00018987341772151899, 0.0281621712146],
		[27000, 0.00025, 0.0247049777679],
		[60000, 0.001, 0.0234537249247],
		[2e5, 0.0005, 0.0188197899714],
		[1e6, 0, 0.011645040998],
	],
	found: (re, rough) => frictionFactor(re!, rough!),
});

published({
	what: 'friction factor read from a chart by Reynolds number, relative roughness',
	source: 'Crane TP-410, solved problem 7.1 (smooth pipe); White, Fluid Mechanics, Example 6.7',
	obtained: 'read',
	within: { rel: 0.02, why: 'chart readings' },
	rows: [
		[100600, 0, 0.0179],
		[128000, 0.0013, 0.0225],
	],
	found: (re, rough) => frictionFactor(re!, rough!),
});

const petrol: Omit<Line, 'bore' | 'length'> = {
	roughness: drawnTubing,
	elbows: 0,
	smallestBore: null,
	density: 745,
	viscosity: 0.55e-6,
};
const kilograms = (litresHour: number) => (litresHour / 3.6e6) * 745;

const petrolSource = 'python3-fluids 1.0.22: one_phase_dP, 745 kg/m3, 0.55 mm2/s, roughness 1.5 um';

published({
	what: 'petrol line loss in kPa by L/h, bore mm, length m',
	source: petrolSource,
	obtained: 'computed',
	within: { rel: 2e-3, why: 'the library takes another fit of Colebrook' },
	rows: [
		[20, 7.7, 4, 0.10554],
		[190, 7.7, 4, 6.9079],
		[255, 7.7, 4, 11.608],
		[255, 6, 4, 38.403],
		[400, 9.5, 5, 11.784],
		[60, 4.6, 5, 13.36894],
		[120, 7.7, 3, 2.317618],
		[340, 7.7, 5.5, 26.59144],
		[455, 8.7, 4.5, 20.34128],
		[90, 4.6, 2, 10.86335],
		[600, 10.9, 6, 15.04481],
	],
	found: (flow, bore, length) => lineLoss({ ...petrol, bore: bore! / 1000, length: length! }, kilograms(flow!)) / 1000,
});

published({
	what: 'petrol line speed in m/s by L/h, bore mm',
	source: petrolSource,
	obtained: 'computed',
	within: { rel: 5e-4, why: 'printed digits' },
	rows: [
		[20, 7.7, 0.1193],
		[190, 7.7, 1.1334],
		[255, 7.7, 1.5211],
		[255, 6, 2.5052],
		[400, 9.5, 1.5675],
		[90, 4.6, 1.5043],
	],
	found: (flow, bore) => pipeVelocity(kilograms(flow!), 745, bore! / 1000),
});

published({
	what: 'petrol line Reynolds number by m/s, bore mm',
	source: petrolSource,
	obtained: 'computed',
	within: { rel: 5e-4, why: 'printed digits' },
	rows: [
		[0.1193, 7.7, 1670.26],
		[1.1334, 7.7, 15867.5],
		[1.5211, 7.7, 21295.8],
		[2.5052, 6, 27329.6],
	],
	found: (speed, bore) => reynolds(speed!, bore! / 1000, 0.55e-6),
});

published({
	what: 'fuel oil, 100 ft of 2 in schedule 40, 2 gal/s: loss in Pa by L/s',
	source: 'Crane TP-410, solved problem 7.13',
	obtained: 'read',
	within: { rel: 0.015, why: 'worked there with a chart friction factor of 0.0230' },
	rows: [[7.570824, 66500]],
	found: flow => {
		const oil = { density: 814.266, viscosity: 2.7e-6, roughness: 45.7e-6, elbows: 0, smallestBore: null };
		return lineLoss({ ...oil, bore: 0.0525, length: 30.48 }, (flow! / 1000) * oil.density);
	},
});

published({
	what: 'sudden contraction by wide mm, narrow mm',
	source: "python3-fluids 1.0.22: contraction_sharp(method='Crane')",
	obtained: 'computed',
	within: { rel: 2e-6, why: 'printed digits; other correlations lie 40 % over to 16 % under' },
	rows: [
		[9.5, 6.35, 0.276607],
		[8, 5, 0.304688],
		[7.7, 6, 0.196407489],
		[7.7, 3, 0.424101872],
		[12.7, 10, 0.18999938],
	],
	found: (wide, narrow) => contractionLoss(narrow! / wide!),
});

published({
	what: 'sudden expansion by narrow mm, wide mm',
	source: 'Borda-Carnot; python3-fluids 1.0.22: diffuser_sharp',
	obtained: 'computed',
	within: { rel: 2e-6, why: 'printed digits' },
	rows: [
		[6.35, 9.5, 0.306045],
		[5, 8, 0.371338],
		[6, 7.7, 0.154303606],
		[3, 7.7, 0.719449592],
	],
	found: (narrow, wide) => expansionLoss(narrow! / wide!),
});

published({
	what: 'entrance from and exit into a vessel: a bore ratio of 0',
	source: "Crane TP-410 entrance 0.5, exit 1.0; python3-fluids 1.0.22: entrance_sharp(method='Crane'), exit_normal",
	obtained: 'computed',
	within: { rel: 1e-9, why: 'exact limits' },
	rows: [
		[0, 0.5],
		[1, 1],
	],
	found: out => (out === 1 ? expansionLoss(0) : contractionLoss(0)),
});

published({
	what: 'threaded 90 degree elbow near 9 mm bore: 30 fT, with fT 0.02974',
	source: 'Crane TP-410, 30 fT from memory; fT by python3-fluids 1.0.22: ft_Crane(0.00925)',
	obtained: 'computed',
	within: { rel: 0.01, why: 'kept to one digit' },
	rows: [[30 * 0.029738570675, 0.892]],
	found: () => elbowLoss,
});

published({
	what: 'roughness of drawn tubing in ft',
	source: 'Moody 1944, and every chart after it: 0.000005 ft',
	obtained: 'memory',
	within: { rel: 0.018, why: '1.5 um is 0.00000492 ft' },
	rows: [[5e-6]],
	found: () => drawnTubing / foot,
});

published({
	what: 'loss of a threaded 90 degree elbow in velocity heads by bore mm',
	source: 'Crane TP-410, 30 fT from memory; fT by python3-fluids 1.0.22: ft_Crane(bore)',
	obtained: 'computed',
	within: { rel: 0.05, why: 'one figure is used from 7.7 to 9.5 mm' },
	rows: [
		[7.7, 30 * 0.03141534940030432],
		[8.7, 30 * 0.03028376452693863],
		[9.5, 30 * 0.029505973176357534],
	],
	found: () => elbowLoss,
});

published({
	what: 'the same in velocity heads by bore mm',
	source: "python3-fluids 1.0.22: Darby3K(bore, Re 20000, 'Elbow, 90 degrees, threaded, standard, (r/D = 1)')",
	obtained: 'computed',
	within: { rel: 0.09, why: 'another correlation' },
	rows: [
		[7.7, 0.9811077339028589],
		[8.7, 0.9522934761493151],
		[9.5, 0.9321787508896103],
		[12.7, 0.8694408714731533],
	],
	found: () => elbowLoss,
});

published({
	what: 'one elbow of half an inch with water at 6.6 m/s: kPa',
	source: 'open textbook course, review question on a 0.5 inch 90 degree elbow: fT 0.027, K 0.81, 17.5 kPa',
	obtained: 'read',
	within: { rel: 0.13, why: '0.9 is held, which is for 7.7 to 9.5 mm; at 12.7 mm it is 0.81' },
	rows: [[6.6, 17.5]],
	found: speed => {
		const water = { density: 1000, viscosity: 1e-6, roughness: drawnTubing, smallestBore: null };
		const flow = speed! * 1000 * (Math.PI / 4) * 0.0127 ** 2;
		return lineLoss({ ...water, bore: 0.0127, length: 0, elbows: 1 }, flow) / 1000;
	},
});
