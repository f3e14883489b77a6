/** What one kind of molecule holds: molar mass in kg/mol, molar heat over the gas constant by powers of T in K, and T^-2. */
export interface Species {
	readonly mass: number;
	/** c0 to c4, 300 to 1000 K. */
	readonly cool: readonly number[];
	/** The same, 1000 to 5000 K; none for a fuel, which is burnt by then. */
	readonly hot?: readonly number[];
	/** Times T^-2; fuels alone. */
	readonly back?: number;
}

/** The universal gas constant, J/molK: exact by definition. */
export const universalConstant = 8.31446261815324;

/** A fuel's heat as printed: cal/molK by powers of T / 1000 K, the last with its inverse square. */
function fuelHeat(a1: number, a2: number, a3: number, a4: number, a5: number) {
	const share = 4.184 / universalConstant;
	return { cool: [a1, a2 / 1e3, a3 / 1e6, a4 / 1e9, 0].map(a => a * share), back: a5 * 1e6 * share };
}

/**
 * The gases of a gasoline engine and vapors of its fuels: gasoline as C8.26 H15.5.
 *
 * Source: Heywood, Internal Combustion Engine Fundamentals, tables 4.10 and 4.11 (figures from memory; the outside tests hold
 * them to another table within 1 %, steam above 2000 K within 2 %).
 */
export const species = {
	CO2: {
		mass: 0.04401,
		cool: [2.4008, 8.7351e-3, -6.6071e-6, 2.0022e-9, 6.3274e-16],
		hot: [4.4608, 3.0982e-3, -1.2393e-6, 2.2741e-10, -1.5526e-14],
	},
	H2O: {
		mass: 0.018015,
		cool: [4.0701, -1.1084e-3, 4.1521e-6, -2.9637e-9, 8.0702e-13],
		hot: [2.7168, 2.9451e-3, -8.0224e-7, 1.0227e-10, -4.8472e-15],
	},
	CO: {
		mass: 0.02801,
		cool: [3.7101, -1.6191e-3, 3.6924e-6, -2.032e-9, 2.3953e-13],
		hot: [2.9841, 1.4891e-3, -5.79e-7, 1.0365e-10, -6.9354e-15],
	},
	H2: {
		mass: 0.002016,
		cool: [3.0574, 2.6765e-3, -5.8099e-6, 5.521e-9, -1.8123e-12],
		hot: [3.1002, 5.1119e-4, 5.2644e-8, -3.491e-11, 3.6945e-15],
	},
	O2: {
		mass: 0.031998,
		cool: [3.6256, -1.8782e-3, 7.0555e-6, -6.7635e-9, 2.1556e-12],
		hot: [3.622, 7.3618e-4, -1.9652e-7, 3.6202e-11, -2.8946e-15],
	},
	N2: {
		mass: 0.028013,
		cool: [3.6748, -1.2082e-3, 2.324e-6, -6.3218e-10, -2.2577e-13],
		hot: [2.8963, 1.5155e-3, -5.7235e-7, 9.9807e-11, -6.5224e-15],
	},
	gasoline: { mass: 0.11483, ...fuelHeat(-24.078, 256.63, -201.68, 64.75, 0.5808) },
	ethanol: { mass: 0.04607, ...fuelHeat(6.99, 39.741, -11.926, 0, 0) },
} as const satisfies Record<string, Species>;
