import { numberIn, type State, valueIn } from '../../graph/solve.ts';
import { psi } from '../../physics/constants.ts';

/** What to look at during a step, in canonical units: what to expect, and where to lift. Null: not worked out, or no figure to lift at. */
export interface Watch {
	readonly quantity: string;
	readonly expect: number | null;
	readonly lift_at: number | null;
}

/** Pa of boost over the step: where fuel is cut, and where to lift. */
export const cutOver = psi;
/** Where to lift: lambda over the target, Pa of rail under the expected, deg of knock retard, V of the meter under its ceiling. */
const [leanLimit, railDrop, knockLimit, meterReserve] = [0.03, 4 * psi, 0.5, 0.2] as const;

/** @param state at the step, on the day of the log */
export function watchAt(state: State, boost: number): Watch[] {
	const known = (value: number): number | null => (Number.isFinite(value) ? value : null);
	const of = (id: string) => numberIn(state, id);
	const rail = of('fuel.rail_pressure_under_flow');
	const metered = valueIn(state, 'sensors.meter_kind') !== 'none-speed-density';
	return [
		// First the over-boost cut: it is set there and proved; no figure to lift at.
		{ quantity: 'boost.overboost_cut', expect: boost + cutOver, lift_at: null },
		{ quantity: 'log.boost_peak', expect: boost, lift_at: boost + cutOver },
		{
			quantity: 'log.lambda_leanest',
			expect: known(of('boost.lambda')),
			lift_at: known(of('boost.lambda') + leanLimit),
		},
		{ quantity: 'log.rail_held_low', expect: known(rail), lift_at: known(rail - railDrop) },
		{ quantity: 'log.knock_most', expect: 0, lift_at: knockLimit },
		{ quantity: 'log.duty_peak', expect: known(of('injectors.duty')), lift_at: known(of('injectors.duty_limit')) },
		{
			quantity: 'log.charge_temp_end',
			expect: known(of('boost.charge_temp')),
			lift_at: known(of('boost.charge_temp_most')),
		},
		...(metered
			? [
					{
						quantity: 'log.meter_volts_peak',
						expect: known(of('sensors.controller_volts_peak')),
						lift_at: known(of('sensors.meter_ceiling') - meterReserve),
					},
				]
			: []),
	];
}
