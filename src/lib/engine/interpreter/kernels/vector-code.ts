/** Instructions on vectors of two numbers, as bytes (WebAssembly Core Specification 2.0, chapter 5.4.8). */
import { signed, unsigned } from './module-bytes';

export type Code = readonly number[];

export const vectorOp = (op: number): Code => [0xfd, ...unsigned(op)];
export const LOAD = 0;
export const LOAD_SPLAT = 10;
export const STORE = 11;
export const SPLAT = vectorOp(20);
export const EXTRACT = vectorOp(33);
export const EQ = vectorOp(71);
export const NE = vectorOp(72);
export const LT = vectorOp(73);
export const GT = vectorOp(74);
export const LE = vectorOp(75);
export const GE = vectorOp(76);
export const AND = vectorOp(78);
export const AND_NOT = vectorOp(79);
export const OR = vectorOp(80);
export const SELECT = vectorOp(82);
export const ABS = vectorOp(236);
export const NEG = vectorOp(237);
export const SQRT = vectorOp(239);
export const ADD = vectorOp(240);
export const SUB = vectorOp(241);
export const MUL = vectorOp(242);
export const DIV = vectorOp(243);
export const MIN = vectorOp(244);
export const MAX = vectorOp(245);

/** Two lanes of nothing but zero bits: also the number 0. */
export const ZERO: Code = [...vectorOp(12), ...Array<number>(16).fill(0)];
export const ALL_BITS: Code = [...vectorOp(12), ...Array<number>(16).fill(0xff)];
/** f64.const. */
const f64 = (value: number): Code => [0x44, ...new Uint8Array(Float64Array.of(value).buffer)];
export const ONE: Code = [...f64(1), ...SPLAT];

/** i64x2.all_true: neither lane is 0. */
export const ALL_TRUE = vectorOp(195);

export const get = (local: number): Code => [0x20, ...unsigned(local)];
export const set = (local: number): Code => [0x21, ...unsigned(local)];
export const tee = (local: number): Code => [0x22, ...unsigned(local)];
export const i32 = (value: number): Code => [0x41, ...signed(value)];
export const PLUS: Code = [0x6a];
/** i32.lt_u. */
export const BELOW: Code = [0x49];

/** Of single numbers: f64.add and f64.eq. */
export const F64_ZERO = f64(0);
export const F64_ADD: Code = [0xa0];
export const F64_EQUAL: Code = [0x61];

/** A loop that takes nothing and leaves nothing on the stack; br_if to its beginning; its end. */
export const LOOP: Code = [0x03, 0x40];
export const AGAIN_IF: Code = [0x0d, 0];
export const END_OF_LOOP: Code = [0x0b];
