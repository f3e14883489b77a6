import { isMissing } from '../table/cell.ts';

type WordReader = (cell: string) => number | undefined;

/** 1 for a closed fuel loop, in words or as the status bits of SAE J1979: 2 and 16 are closed, 4 and 8 open; a lone 1 is yes. */
const loop: WordReader = cell => {
	const text = cell.trim().toLowerCase();
	if (/^(?:closed|cl|on|true|yes|1|2|16|closed loop|cl-fault)(?:\.0+)?$/.test(text)) return 1;
	if (/^(?:open|ol|off|false|no|0|4|8|open loop|ol-drive|ol-fault)(?:\.0+)?$/.test(text)) return 0;
	return isMissing(text) ? Number.NaN : undefined;
};

/** A gear by number, D3 as 3, neutral and park as 0, reverse as -1. */
const gear: WordReader = cell => {
	const text = cell.trim().toUpperCase();
	const [, number] = /^[DMS]?([0-9]|1[0-2])(?:\.0+)?(?:ST|ND|RD|TH)?$/.exec(text) ?? [];
	if (number !== undefined) return Number(number);
	if (/^(?:N|P|NEUTRAL|PARK|P\/N)$/.test(text)) return 0;
	if (/^(?:R|REVERSE|-1(?:\.0+)?)$/.test(text)) return -1;
	return isMissing(text) ? Number.NaN : undefined;
};

/** Channels whose cells are words as often as numbers. */
export const wordReaders: Readonly<Record<string, WordReader | undefined>> = { loop, gear };
