// The floor of a drawn program: one line by the drawing library, bundled, and nothing else.
import { render, Text } from 'ink';
import { createElement } from 'react';

process.stdin.setRawMode(true);
process.stdin.resume();
render(createElement(Text, null, 'First question'));
