// Lays a part of the module back from its strands; src/cli/src/site/strands.rs says how they lie.

// How many numbers follow an instruction and in which strand they lie, as runs of instructions:
// first, last, strand, count. Whatever is in no run stands alone.
const RUNS = [
  [0x02, 0x04, 3, 1], [0x0c, 0x0d, 4, 1], [0x10, 0x10, 5, 1], [0x11, 0x11, 15, 2], [0x20, 0x20, 6, 1],
  [0x21, 0x21, 7, 1], [0x22, 0x22, 8, 1], [0x23, 0x26, 9, 1], [0x28, 0x35, 10, 1], [0x36, 0x3e, 11, 1],
  [0x3f, 0x40, 15, 1], [0x41, 0x41, 12, 1], [0x42, 0x42, 13, 1], [0xd0, 0xd0, 15, 1], [0xd2, 0xd2, 15, 1],
];
const ALIGNED = [2, 3, 2, 3, 0, 0, 1, 1, 0, 0, 1, 1, 2, 2, 2, 3, 2, 3, 0, 1, 0, 1, 2];
// The same for what follows 0xfc.
const COUNTS = [0, 0, 0, 0, 0, 0, 0, 0, 2, 1, 2, 1, 2, 1, 2, 1, 1, 1];
const STRANDS = 16;
// The first of the bytes that stand for reading one of the first four locals.
const [GET, SHORT_GET, FEW] = [0x20, 0xd3, 4];
const [SECTIONS, LOCALS, INSTRUCTIONS, FIXED, REST] = [0, 1, 2, 14, 15];

/** The module whose strands these are, as bytes that the browser can compile. */
export function whole(bytes) {
  const kinds = new Uint8Array(256);
  const counts = new Uint8Array(256);
  for (const [first, last, kind, count] of RUNS) {
    kinds.fill(kind, first, last + 1);
    counts.fill(count, first, last + 1);
  }
  // Lengths of functions, alignments and locals come back: at most two bytes more for each.
  const out = new Uint8Array(bytes.length * 3);
  let end = 0;
  const places = new Uint32Array(STRANDS + 1);
  const read = (kind) => {
    let number = 0;
    for (let shift = 0; ; shift += 7) {
      const byte = bytes[places[kind]++];
      number |= (byte & 127) << shift;
      if (byte < 128) return number;
    }
  };
  const copy = (kind, count) => {
    out.set(bytes.subarray(places[kind], places[kind] + count), end);
    places[kind] += count;
    end += count;
  };
  const number = (kind) => {
    const from = places[kind];
    const value = read(kind);
    const count = places[kind] - from;
    places[kind] = from;
    copy(kind, count);
    return value;
  };

  const lengths = Array.from({ length: STRANDS }, () => read(STRANDS));
  lengths.reduce((place, length, kind) => (places[kind] = place) + length, places[STRANDS]);

  /** One instruction and what belongs to it; by how much it opens (1) or closes (-1) a block. */
  function instruction() {
    const code = (out[end++] = bytes[places[INSTRUCTIONS]++]);
    const local = code - SHORT_GET;
    if (local >= 0 && local < FEW) {
      out[end - 1] = GET;
      out[end++] = local;
      return 0;
    }
    if (code >= 0x28 && code <= 0x3e) out[end++] = ALIGNED[code - 0x28];
    const kind = kinds[code];
    for (let left = counts[code]; left > 0; left -= 1) {
      while ((out[end++] = bytes[places[kind]++]) > 127);
    }
    if (code === 0x0e) {
      for (let left = number(REST); left >= 0; left -= 1) number(REST);
    } else if (code === 0x43 || code === 0x44) {
      copy(FIXED, code === 0x43 ? 4 : 8);
    } else if (code === 0xfc) {
      const which = (out[end++] = bytes[places[INSTRUCTIONS]++]);
      for (let left = COUNTS[which]; left > 0; left -= 1) number(REST);
    }
    return code === 0x0b ? -1 : +(code >= 0x02 && code <= 0x04);
  }

  function body() {
    // Its length is known once it stands: room for the longest, closed up afterwards.
    const start = end;
    end += 5;
    for (let left = number(LOCALS); left > 0; left -= 1) {
      number(LOCALS);
      copy(LOCALS, 1);
    }
    for (let open = 1; open > 0; ) open += instruction();
    let length = end - start - 5;
    let place = start;
    for (; length > 127; length >>>= 7) out[place++] = (length & 127) | 128;
    out[place++] = length;
    out.copyWithin(place, start + 5, end);
    end -= start + 5 - place;
  }

  copy(SECTIONS, 8);
  const last = places[SECTIONS] + lengths[SECTIONS] - 8;
  while (places[SECTIONS] < last) {
    const section = bytes[places[SECTIONS]];
    copy(SECTIONS, 1);
    const length = number(SECTIONS);
    if (section !== 10) copy(SECTIONS, length);
    else for (let left = number(SECTIONS); left > 0; left -= 1) body();
  }
  return out.subarray(0, end);
}

/** Fetches such a part and starts it with what it shares with the first. */
export async function start(answer, imports) {
  const response = await answer;
  if (!response.ok) throw new Error(`${response.url}: ${response.status}`);
  return WebAssembly.instantiate(whole(new Uint8Array(await response.arrayBuffer())), imports);
}
