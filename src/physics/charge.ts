import { fuels, pureEthanol } from './fuels.ts';
import { enthalpyAt, type Gas } from './gas.ts';
import { within } from './range.ts';
import { type Species, species, universalConstant } from './species.ts';

/** The two gases of a burning charge: what the flame has not reached, and what it leaves. */
export interface Charge {
	readonly unburnt: Gas;
	readonly burnt: Gas;
	/** What a rich mixture leaves in CO and H2, J per kg of fuel: heat that is not set free. */
	readonly kept: number;
}

/** Moles of each, for one kg of fuel. */
interface Moles {
	readonly gasoline: number;
	readonly ethanol: number;
	readonly CO2: number;
	readonly CO: number;
	readonly H2O: number;
	readonly H2: number;
	readonly O2: number;
	readonly N2: number;
}

/** Moles of nitrogen (and argon) that come with one of oxygen. Heywood, section 3.2. */
const nitrogen = 3.773;
/** (H2O)(CO) over (CO2)(H2) in rich burnt gas. Heywood, section 4.9.2. */
const waterGas = 3.5;
/** Lower heating values of CO and H2, J/mol. Heywood, table 3.2. */
const monoxideHeat = 282.99e3;
const hydrogenHeat = 241.83e3;
/** kg/m3: what turns a share by volume into one by mass. */
const [gasolineDensity, ethanolDensity] = [fuels.petrol.density, pureEthanol.density] as const;

/**
 * Charge of a spark-ignition engine. Lambda 0.5 to 2, ethanol in the fuel by volume (0 to 1), residual by mass (0 to 0.5).
 *
 * The burnt gas is complete products when lean, and with what the air cannot burn as CO and H2 in water-gas balance when
 * rich. Left out: dissociation, which at lambda 0.8 to 0.9 takes under 1 % off the peak pressure and at 1.0 some 3 %.
 * Errors: OutOfRange. Source: Heywood, Internal Combustion Engine Fundamentals, sections 3.4, 4.7 and 4.9.
 */
export function chargeOf(lambda: number, ethanol: number, residual: number): Charge {
	within('lambda', lambda, 0.5, 2);
	within('ethanol share', ethanol, 0, 1);
	within('residual', residual, 0, 0.5);
	const ethanolMass = (ethanol * ethanolDensity) / (ethanol * ethanolDensity + (1 - ethanol) * gasolineDensity);
	const gasolineMoles = (1 - ethanolMass) / species.gasoline.mass;
	const ethanolMoles = ethanolMass / species.ethanol.mass;
	const carbon = 8.26 * gasolineMoles + 2 * ethanolMoles;
	const hydrogen = 15.5 * gasolineMoles + 6 * ethanolMoles;
	const oxygen = lambda * (carbon + hydrogen / 4 - ethanolMoles / 2);
	const products = burntWith(carbon, hydrogen, oxygen, lambda);
	// A kg of fuel with its air leaves as much burnt gas, and the residual's share is by mass.
	const stays = residual / (1 - residual);
	const mixed = {
		gasoline: gasolineMoles,
		ethanol: ethanolMoles,
		CO2: stays * products.CO2,
		CO: stays * products.CO,
		H2O: stays * products.H2O,
		H2: stays * products.H2,
		O2: oxygen + stays * products.O2,
		N2: (1 + stays) * products.N2,
	};
	const kept = monoxideHeat * products.CO + hydrogenHeat * products.H2;
	return { unburnt: cool(mixed), burnt: hot(products), kept };
}

/** What the fuel of one kg burns to with so much oxygen, moles. */
function burntWith(carbon: number, hydrogen: number, oxygen: number, lambda: number): Moles {
	const N2 = nitrogen * oxygen;
	const needed = oxygen / lambda;
	if (lambda >= 1)
		return { gasoline: 0, ethanol: 0, CO2: carbon, CO: 0, H2O: hydrogen / 2, H2: 0, O2: oxygen - needed, N2 };
	const short = 2 * (needed - oxygen);
	// K (CO2)(H2) = (CO)(H2O) with CO + H2 = short.
	const a = waterGas - 1;
	const b = waterGas * (carbon + short) + hydrogen / 2 - short;
	const CO = (b - Math.sqrt(b * b - 4 * a * waterGas * carbon * short)) / (2 * a);
	const H2 = short - CO;
	return { gasoline: 0, ethanol: 0, CO2: carbon - CO, CO, H2O: hydrogen / 2 - H2, H2, O2: 0, N2 };
}

const kinds = ['gasoline', 'ethanol', 'CO2', 'CO', 'H2O', 'H2', 'O2', 'N2'] as const;

/** Up to 1000 K, and held from 1200 K on. */
function cool(moles: Moles): Gas {
	const gas = mixture(moles, 'cool', 250, 1200);
	gas.zero = -enthalpyAt(gas, 298.15);
	return gas;
}

/** From 1000 K on, where both tables meet, held from 3500 K on. */
function hot(moles: Moles): Gas {
	const gas = mixture(moles, 'hot', 1000, 3500);
	gas.zero = enthalpyAt(cool(moles), 1000) - enthalpyAt(gas, 1000);
	return gas;
}

/** Its enthalpy is not set to its zero yet. Each gas is made here, so that what was compiled for one serves for all. */
function mixture(
	moles: Moles,
	table: 'cool' | 'hot',
	from: number,
	to: number,
): { -readonly [Key in keyof Gas]: Gas[Key] } {
	let [mass, all, back] = [0, 0, 0];
	let [c0, c1, c2, c3, c4] = [0, 0, 0, 0, 0];
	for (const kind of kinds) {
		const n = moles[kind];
		const one: Species = species[kind];
		const heat = one[table];
		if (n === 0 || !heat) continue;
		all += n;
		mass += n * one.mass;
		c0 += n * heat[0]!;
		c1 += n * heat[1]!;
		c2 += n * heat[2]!;
		c3 += n * heat[3]!;
		c4 += n * heat[4]!;
		back += n * (one.back ?? 0);
	}
	const r = universalConstant / mass;
	return {
		constant: r * all,
		c0: r * c0,
		c1: r * c1,
		c2: r * c2,
		c3: r * c3,
		c4: r * c4,
		back: r * back,
		from,
		to,
		zero: 0,
	};
}
