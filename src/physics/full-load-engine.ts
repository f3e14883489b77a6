import type { Cylinder } from './slider-crank.ts';

/** One cylinder at full load, in the terms that a person or a gauge gives. */
export interface FullLoad {
	readonly cylinder: Cylinder;
	/** rpm. */
	readonly speed: number;
	/** deg after bottom dead center. */
	readonly intakeCloses: number;
	/** Pa absolute and K, in the manifold. */
	readonly manifoldPressure: number;
	readonly chargeTemperature: number;
	/** Air drawn in over the swept volume at manifold density. */
	readonly volumetricEfficiency: number;
	readonly lambda: number;
	/** Ethanol: share of the fuel's volume. */
	readonly fuel: { readonly stoichiometricRatio: number; readonly heatingValue: number; readonly ethanol: number };
	/** Spark, deg before top dead center. */
	readonly advance: number;
	/** Slower or faster than the usual flame: times both of its angles. */
	readonly burn?: number;
	/** Only to 90 % burnt and past the peak: all that peak pressure and knock ask. */
	readonly toPeak?: boolean;
}

/** What two engines of one cycle agree in. */
type Figure = keyof Cylinder | keyof FullLoad['fuel'] | Exclude<keyof FullLoad, 'cylinder' | 'fuel'>;

/** A text that two engines share if they agree in every figure. */
export function keyOf(engine: FullLoad): string {
	const { cylinder, fuel } = engine;
	const figures = {
		bore: cylinder.bore,
		stroke: cylinder.stroke,
		rod: cylinder.rod,
		ratio: cylinder.ratio,
		stoichiometricRatio: fuel.stoichiometricRatio,
		heatingValue: fuel.heatingValue,
		ethanol: fuel.ethanol,
		speed: engine.speed,
		intakeCloses: engine.intakeCloses,
		manifoldPressure: engine.manifoldPressure,
		chargeTemperature: engine.chargeTemperature,
		volumetricEfficiency: engine.volumetricEfficiency,
		lambda: engine.lambda,
		advance: engine.advance,
		burn: engine.burn ?? 1,
		toPeak: Number(engine.toPeak ?? false),
	} satisfies Record<Figure, number>;
	return Object.values(figures).join();
}
