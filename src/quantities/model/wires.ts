import { ampacity, bundleAmpacity, chartFuse } from '../../physics/ampacity.ts';
import { largestFuse, smallestFuse, soldFuseUpTo } from '../../physics/fuse.ts';
import { longestRun, vehicleWireDrop } from '../../physics/wire.ts';
import { quantity } from '../quantity.ts';

const wireDrop = { kind: 'voltage', source: ['astm-b258', 'iacs', 'ohm'], nature: 'estimate' } as const;

export const pumpDrop = quantity({
	...wireDrop,
	id: 'fuel.pump_wire_drop',
	label: 'pump wire voltage drop',
	inputs: ['fuel.pump_current', 'fuel.pump_wire_gauge', 'fuel.pump_wire_length'],
	formula: 'current x resistance at 60 degC, 1.02 for stranding, out and back',
	compute: q =>
		vehicleWireDrop(q.number('fuel.pump_current'), q.number('fuel.pump_wire_gauge'), q.number('fuel.pump_wire_length')),
});

export const pumpRun = quantity({
	id: 'fuel.pump_wire_longest',
	label: 'longest run of the pump wire',
	kind: 'length',
	shown: { us: 'ft', metric: 'm' },
	inputs: ['fuel.pump_current', 'fuel.pump_wire_gauge'],
	formula: 'one way, 0.5 V lost out and back: 0.5 V / (2 x current x resistance a length at 60 degC x 1.02)',
	source: ['astm-b258', 'iacs', 'ohm'],
	nature: 'estimate',
	compute: q => longestRun(0.5, q.number('fuel.pump_current'), q.number('fuel.pump_wire_gauge')),
});

export const pumpBundle = quantity({
	id: 'fuel.pump_wire_bundled',
	label: 'what the pump wire carries in a full bundle',
	kind: 'current',
	inputs: ['fuel.pump_wire_gauge'],
	formula:
		'table of the aircraft circular, 105 degC wire, 33 in a bundle (9 from 8 AWG on), 70 degC around it: advice only',
	source: ['ac43'],
	nature: 'exact',
	compute: q => bundleAmpacity(q.number('fuel.pump_wire_gauge')) ?? null,
});

export const cableDrop = quantity({
	...wireDrop,
	id: 'charging.cable_drop',
	label: 'charge cable voltage drop',
	inputs: ['charging.alternator', 'charging.cable_gauge', 'charging.cable_length'],
	formula: 'hot output x resistance at 60 degC, 1.02 for stranding, out and back',
	compute: q =>
		vehicleWireDrop(
			q.number('charging.alternator'),
			q.number('charging.cable_gauge'),
			q.number('charging.cable_length'),
		),
});

const fuseFit = { kind: 'yes-no', source: ['cfr183', 'practice'], nature: 'estimate' } as const;

/** The largest fuse that protects a wire of some m2, A; 0 where the table does not reach (thinner than 18 AWG). */
const maxFuse = (area: number): number => {
	const rating = ampacity(area);
	return rating === undefined ? 0 : largestFuse(rating);
};

export const pumpWire = quantity({
	...fuseFit,
	id: 'fuel.pump_wire_ok',
	label: 'pump wire and fuse fit',
	inputs: ['fuel.pump_fuse', 'fuel.pump_wire_gauge', 'fuel.pump_current'],
	formula: 'fuse <= 0.85 x what 105 degC wire of that size may carry, and load <= 0.8 fuse',
	compute: q => {
		const [fuse, wire, load] = [
			q.number('fuel.pump_fuse'),
			q.number('fuel.pump_wire_gauge'),
			q.number('fuel.pump_current'),
		];
		return fuse <= maxFuse(wire) && smallestFuse(load) <= fuse;
	},
});

export const pumpMostFuse = quantity({
	id: 'fuel.pump_fuse_most',
	label: 'largest pump fuse',
	kind: 'current',
	inputs: ['fuel.pump_wire_gauge'],
	formula: '0.85 x what 105 degC wire of that size may carry',
	source: ['cfr183'],
	nature: 'estimate',
	compute: q => maxFuse(q.number('fuel.pump_wire_gauge')),
});

export const pumpChartFuse = quantity({
	id: 'fuel.pump_fuse_chart',
	label: 'pump fuse by the aircraft chart',
	kind: 'current',
	inputs: ['fuel.pump_wire_gauge'],
	formula: 'the fuse of the aircraft chart for that wire: advice only',
	source: ['ac43'],
	nature: 'exact',
	compute: q => chartFuse(q.number('fuel.pump_wire_gauge')) ?? null,
});

export const cable = quantity({
	...fuseFit,
	id: 'charging.cable_ok',
	label: 'charge cable and fuse fit',
	inputs: ['charging.cable_fuse', 'charging.cable_gauge', 'charging.alternator'],
	formula: "fuse <= 0.85 x what 105 degC cable of that size may carry, and >= 1.25 x the alternator's output",
	compute: q => {
		const [fuse, wire, output] = [
			q.number('charging.cable_fuse'),
			q.number('charging.cable_gauge'),
			q.number('charging.alternator'),
		];
		return fuse <= maxFuse(wire) && fuse >= smallestFuse(output);
	},
});

export const cableMostFuse = quantity({
	id: 'charging.cable_fuse_most',
	label: 'largest charge cable fuse',
	kind: 'current',
	inputs: ['charging.cable_gauge'],
	formula: '0.85 x what 105 degC cable of that size may carry',
	source: ['cfr183'],
	nature: 'estimate',
	compute: q => maxFuse(q.number('charging.cable_gauge')),
});

export const cableSoldFuse = quantity({
	id: 'charging.cable_fuse_sold',
	label: 'largest charge cable fuse sold',
	kind: 'current',
	inputs: ['charging.cable_fuse_most'],
	formula: 'the largest fuse sold up to charging.cable_fuse_most',
	source: ['cfr183'],
	nature: 'estimate',
	compute: q => soldFuseUpTo(q.number('charging.cable_fuse_most')),
});

export const pumpSoldFuse = quantity({
	id: 'fuel.pump_fuse_sold',
	label: 'largest pump fuse sold',
	kind: 'current',
	inputs: ['fuel.pump_fuse_most'],
	formula: 'the largest fuse sold up to fuel.pump_fuse_most',
	source: ['cfr183'],
	nature: 'estimate',
	compute: q => soldFuseUpTo(q.number('fuel.pump_fuse_most')),
});

export const fanWire = quantity({
	...fuseFit,
	id: 'cooling.fan_wire_ok',
	label: 'fan fuse fits',
	inputs: ['cooling.fan_current', 'cooling.fan_fuse'],
	formula: 'load <= 0.8 fuse',
	compute: q => {
		const [load, fuse] = [q.number('cooling.fan_current'), q.number('cooling.fan_fuse')];
		return smallestFuse(load) <= fuse;
	},
});
