import { blendOf, fuelFlow, fuels } from '../../src/physics/fuels.ts';
import { btu, published, usGallon } from './published.ts';

const afdc = 'US DOE Alternative Fuels Data Center, Properties of Fuels';

published({
	what: 'heating value of petrol in Btu a US gallon',
	source: afdc,
	obtained: 'read',
	within: { rel: 0.001, why: 'density and heating value are rounded' },
	rows: [[116090]],
	found: () => (fuels.petrol.heatingValue * fuels.petrol.density * usGallon) / btu,
});

published({
	what: 'density of petrol in kg/m3: the middle of 720 to 780',
	source: afdc,
	obtained: 'read',
	within: { abs: 30, why: 'the table gives a range' },
	rows: [[750]],
	found: () => fuels.petrol.density,
});

published({
	what: 'viscosity in mm2/s: petrol, the middle of 0.5 to 0.6',
	source: afdc,
	obtained: 'read',
	within: { abs: 0.05, why: 'the table gives a range' },
	rows: [[0.55]],
	found: () => fuels.petrol.viscosity * 1e6,
});

published({
	what: 'viscosity in mm2/s: E85',
	source: 'measured 1.016 mPa s, quoted as 1.3 mm2/s, in an article on E85 properties',
	obtained: 'read',
	within: { rel: 0.05, why: 'two digits' },
	rows: [[1.3]],
	found: () => fuels.e85.viscosity * 1e6,
});

/** Blends petrol with ethanol by volume, weighting by mass: a second way to the table in `fuels`. */
function blend(ethanolByVolume: number): [density: number, ratio: number, heating: number, viscosity: number] {
	const density = 745 * (1 - ethanolByVolume) + 789 * ethanolByVolume;
	const byMass = (789 * ethanolByVolume) / density;
	const mix = (petrol: number, ethanol: number) => petrol * (1 - byMass) + ethanol * byMass;
	return [
		density,
		mix(14.7, 9),
		mix(43.44, 26.95),
		Math.exp(Math.log(0.55) * (1 - ethanolByVolume) + Math.log(1.5) * ethanolByVolume),
	];
}

for (const [name, share] of [
	['petrol', 0],
	['petrol-e10', 0.1],
	['e85', 0.85],
] as const) {
	const { density, stoichiometricRatio, heatingValue, viscosity } = fuels[name];
	const [kept, ratio, heating, thick] = blend(share);
	published({
		what: `${name}: density, air ratio, MJ/kg and mm2/s of the table against blending by mass`,
		source: `${afdc}, blended here; E10 14.1 and E85 9.8 are commonly quoted`,
		obtained: 'computed',
		within: { rel: 0.006, why: 'the table keeps three digits' },
		rows: [
			[density, kept],
			[stoichiometricRatio, ratio],
			[heatingValue / 1e6, heating],
			[viscosity * 1e6, thick],
		],
		found: tabled => tabled!,
	});
}

published({
	what: 'fuel flow in g/s by air g/s, lambda, stoichiometric ratio',
	source: 'textbook companion, example 1.5 (15:1, 60 kW, 42 MJ/kg, 0.30) and definition of lambda',
	obtained: 'computed',
	within: { rel: 1e-5, why: 'printed digits' },
	rows: [
		[71.4285, 1, 15, 4.7619],
		[147, 1, 14.7, 10],
		[147, 0.8, 14.7, 12.5],
	],
	found: (air, lambda, ratio) => fuelFlow(air! / 1000, lambda!, ratio!) * 1000,
});

published({
	what: 'air-fuel ratio that just burns a blend, by ethanol in % of its volume',
	source: 'common practice: tables for blends have E30 12.9, E50 11.8, E70 10.7 to 10.8',
	obtained: 'memory',
	within: { abs: 0.15, why: 'tables start from 14.6 to 14.7' },
	rows: [
		[30, 12.9],
		[50, 11.8],
		[70, 10.75],
	],
	found: percent => blendOf(percent! / 100).stoichiometricRatio,
});

for (const [name, share] of [
	['petrol', 0],
	['petrol-e10', 0.1],
	['e85', 0.85],
] as const)
	published({
		what: `a blend of ${share * 100} % is ${name} of the table: density, ratio, heating value, viscosity`,
		source: 'the table of fuels by DOE properties',
		obtained: 'computed',
		within: { rel: 6e-3, why: 'rounded in the table, viscosity to two digits' },
		rows: [[0, 1]],
		found: () => {
			const [blended, table] = [blendOf(share), fuels[name]];
			const ratios = (['density', 'stoichiometricRatio', 'heatingValue', 'viscosity'] as const).map(
				of => blended[of] / table[of],
			);
			return ratios.reduce((far, ratio) => (Math.abs(ratio - 1) > Math.abs(far - 1) ? ratio : far));
		},
	});
