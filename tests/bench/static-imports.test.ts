import { describe, expect, it } from 'vitest';
import { loadedWith, staticImports } from './static-imports';

describe('the static imports of a built script', () => {
	it('are those with names, those for their effect alone and those handed on', () => {
		const text = 'import{a as b}from"./a.js";import"../b.js";export*from"./c.js";let x=1;';
		expect(staticImports('/nodes/2.js', text)).toEqual(['/nodes/a.js', '/b.js', '/nodes/c.js']);
	});

	it('leave out what is asked for later', () => {
		const text = 'import{a}from"./a.js";const later=()=>import("./later.js"),deps=["./d.js"];';
		expect(staticImports('/x.js', text)).toEqual(['/a.js']);
	});
});

describe('what is loaded with a script', () => {
	it('is followed as far as it goes, each file once, also around a circle', () => {
		const files: Record<string, string> = {
			'/a.js': 'import"./b.js";import"./c.js";',
			'/b.js': 'import"./c.js";',
			'/c.js': 'import"./a.js";'
		};
		expect(loadedWith(['/a.js'], (path) => files[path] ?? '')).toEqual(['/a.js', '/b.js', '/c.js']);
	});
});
