// The floor of a drawn key: the drawing library alone, with as many rows as a question has, and no more work than a redraw.
import { Box, render, Text } from 'ink';
import { createElement as h, useEffect, useState } from 'react';

const rows = Array.from(
	{ length: 18 },
	(_, row) => `Row ${row} with about as many words on it as a line of a question has`,
);

function List() {
	const [typed, setTyped] = useState('');
	useEffect(() => {
		const read = chunk => setTyped(before => (before + chunk).slice(-40));
		process.stdin.on('data', read);
		process.stdout.write('\u001b[?2004h');
		return () => process.stdin.off('data', read);
	}, []);
	return h(
		Box,
		{ flexDirection: 'column' },
		...rows.map((row, index) => h(Text, { key: index, wrap: 'truncate' }, row)),
		h(Text, { key: 'field' }, `Answer: ${typed}_`),
	);
}

process.stdin.setEncoding('utf8');
process.stdin.setRawMode(true);
process.stdout.write('\u001b[?1049h');
render(h(List), { exitOnCtrlC: false, patchConsole: false, maxFps: 60 });
