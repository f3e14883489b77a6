import { fuelPower } from '../../src/physics/willans.ts';
import { published } from './published.ts';

/** MJ/kg and kg/L of gasoline with 10 % ethanol. */
const [heating, density] = [41.9e6, 0.75];

published({
	what: 'brake specific consumption in g/kWh at part load by rpm and bar, 2.0 L, at 2000 rpm and 2 bar and on either side of it',
	source:
		'what papers on port-injected engines of 1990 to 2005 give as their baseline, 370 to 420 and 290 to 320 g/kWh (common figures)',
	obtained: 'memory',
	within: { rel: 0.1, why: 'engines differ so much' },
	rows: [
		[2000, 2, 395],
		[2000, 4, 305],
		[1500, 2.62, 350],
	],
	found: (rpm, bar) => {
		const power = (bar! * 1e5 * 2e-3 * rpm!) / 120;
		return (fuelPower(power, rpm!, 2e-3) / 43e6 / power) * 3.6e9;
	},
});

published({
	what: 'fuel at idle in gal/h by L and rpm, no load',
	source:
		'US DOE, Fact of the Week 861 (2015): 0.39 gal/h for a large sedan of 4.6 L, 0.17 for a compact of 2.0 L; idle speeds are ours',
	obtained: 'memory',
	within: { rel: 0.25, why: 'idle speed and what hangs on the belt are not in the source' },
	rows: [
		[4.6, 700, 0.39],
		[2, 750, 0.17],
	],
	found: (litres, rpm) => ((fuelPower(0, rpm!, litres! * 1e-3) / heating / density) * 3600) / 3.785411784,
});
