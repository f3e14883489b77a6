import type { Charge } from './charge.ts';
import type { Cylinder } from './slider-crank.ts';

/** The valves-shut part of one cylinder's cycle: what it starts from, what burns, what the walls take. */
export interface ClosedCycle {
	readonly cylinder: Cylinder;
	/** rpm, 100 to 20000. */
	readonly speed: number;
	/** Crank angles, deg from top dead center, where the valves are shut (before it) and where one opens (after it). */
	readonly shut: number;
	readonly opens: number;
	/** Ends sooner: once 90 % is burnt and the pressure falls, which is all that peak pressure and knock ask. */
	readonly toPeak?: boolean | undefined;
	/** Gas at `shut`: Pa absolute and K. */
	readonly pressure: number;
	readonly temperature: number;
	readonly charge: Charge;
	/** Wiebe burn: start in deg from top dead center, whole duration in deg, heat in J (0: turned without firing), its power. */
	readonly burn: {
		readonly start: number;
		readonly duration: number;
		readonly heat: number;
		readonly power?: number | undefined;
	};
	/** Walls: K, and a film coefficient in W/m2K (0 to 10000; 0 loses nothing) or Woschni's. */
	readonly walls: { readonly temperature: number; readonly film: number | 'woschni' };
}
