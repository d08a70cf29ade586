// SHA-256 as FIPS 180-4 writes it: own and synchronous, since the browser's is asynchronous and Node's is not in browsers.

/** First 32 bits of the fraction of a number's root, as the standard derives its constants. */
function fraction(root: number): number {
  return ((root - Math.floor(root)) * 2 ** 32) >>> 0;
}

function primes(count: number): number[] {
  const found: number[] = [];
  for (let n = 2; found.length < count; n++) if (found.every((p) => n % p !== 0)) found.push(n);
  return found;
}

/** Round constants (4.2.2) and start values (5.3.3). */
const roundConstants = Uint32Array.from(primes(64), (p) => fraction(Math.cbrt(p)));
const startValues = Uint32Array.from(primes(8), (p) => fraction(Math.sqrt(p)));

const turn = (x: number, by: number): number => (x >>> by) | (x << (32 - by));

/** UTF-8 bytes of a text; a lone surrogate becomes U+FFFD, as in the web's encoder. */
export function utf8(text: string): Uint8Array {
  const bytes: number[] = [];
  for (const sign of text) {
    const read = sign.codePointAt(0) ?? 0;
    const c = read >= 0xd800 && read <= 0xdfff ? 0xfffd : read;
    if (c < 0x80) bytes.push(c);
    else if (c < 0x800) bytes.push(0xc0 | (c >> 6), 0x80 | (c & 63));
    else if (c < 0x10000) bytes.push(0xe0 | (c >> 12), 0x80 | ((c >> 6) & 63), 0x80 | (c & 63));
    else bytes.push(0xf0 | (c >> 18), 0x80 | ((c >> 12) & 63), 0x80 | ((c >> 6) & 63), 0x80 | (c & 63));
  }
  return Uint8Array.from(bytes);
}

/** SHA-256 of bytes, as 64 small hexadecimal digits. */
export function sha256(bytes: Uint8Array): string {
  const blocks = Math.ceil((bytes.length + 9) / 64);
  const padded = new Uint8Array(blocks * 64);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, (bytes.length * 8) >>> 0);
  const state = startValues.slice();
  const schedule = new Uint32Array(64);
  for (let block = 0; block < blocks; block++) oneBlock(state, schedule, view, block * 64);
  return [...state].map((word) => word.toString(16).padStart(8, "0")).join("");
}

/** Mixes one block of 64 bytes into the state (6.2.2). */
function oneBlock(state: Uint32Array, w: Uint32Array, view: DataView, offset: number): void {
  for (let t = 0; t < 16; t++) w[t] = view.getUint32(offset + 4 * t);
  for (let t = 16; t < 64; t++) {
    const x = w[t - 15];
    const y = w[t - 2];
    const s0 = turn(x, 7) ^ turn(x, 18) ^ (x >>> 3);
    const s1 = turn(y, 17) ^ turn(y, 19) ^ (y >>> 10);
    w[t] = w[t - 16] + s0 + w[t - 7] + s1;
  }
  let [a, b, c, d, e, f, g, h] = state;
  for (let t = 0; t < 64; t++) {
    const s1 = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25);
    const t1 = (h + s1 + ((e & f) ^ (~e & g)) + roundConstants[t] + w[t]) | 0;
    const s0 = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22);
    const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + t1) | 0;
    d = c;
    c = b;
    b = a;
    a = (t1 + t2) | 0;
  }
  state[0] += a;
  state[1] += b;
  state[2] += c;
  state[3] += d;
  state[4] += e;
  state[5] += f;
  state[6] += g;
  state[7] += h;
}
