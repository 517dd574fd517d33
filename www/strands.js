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
// The first of the bytes that stand for reading one of the first four locals, behind which lie those
// that stand for giving one of the first four numbers.
const [GET, CONST, SHORT, FEW] = [0x20, 0x41, 0xd3, 4];
const [SECTIONS, LOCALS, INSTRUCTIONS, FIXED, REST] = [0, 1, 2, 14, 15];
const STRANDS = 16;
// The lengths of its strands, with which a block begins.
const HEAD = 4 * STRANDS;

const kinds = new Uint8Array(256);
const counts = new Uint8Array(256);
for (const [first, last, kind, count] of RUNS) {
  kinds.fill(kind, first, last + 1);
  counts.fill(count, first, last + 1);
}

/** Where the strands of the block lie that begins here, and at last where it ends. */
function bounds(bytes) {
  const lengths = new DataView(bytes.buffer, bytes.byteOffset);
  const places = new Uint32Array(STRANDS + 1).fill(HEAD);
  for (let kind = 0; kind < STRANDS; kind += 1) places[kind + 1] = places[kind] + lengths.getUint32(4 * kind, true);
  return places;
}

/** The piece of the module whose strands are in this block. */
function piece(bytes, places) {
  const ends = places.slice(1);
  // Lengths of functions, alignments and locals come back: at most two bytes more for each.
  const out = new Uint8Array(bytes.length * 3);
  let end = 0;
  const copy = (kind, count) => {
    out.set(bytes.subarray(places[kind], places[kind] + count), end);
    places[kind] += count;
    end += count;
  };
  const number = (kind) => {
    let value = 0;
    for (let shift = 0, byte = 128; byte > 127; shift += 7) {
      byte = out[end++] = bytes[places[kind]++];
      value |= (byte & 127) << shift;
    }
    return value;
  };

  /** One instruction and what belongs to it; by how much it opens (1) or closes (-1) a block. */
  function instruction() {
    const code = (out[end++] = bytes[places[INSTRUCTIONS]++]);
    const short = code - SHORT;
    if (short >= 0 && short < 2 * FEW) {
      out[end - 1] = short < FEW ? GET : CONST;
      out[end++] = short % FEW;
      return 0;
    }
    if (code >= 0x28 && code <= 0x3e) out[end++] = ALIGNED[code - 0x28];
    const kind = kinds[code];
    for (let left = counts[code]; left > 0; left -= 1) {
      while ((out[end++] = bytes[places[kind]++]) > 127);
    }
    if (code === 0x0e) {
      for (let left = number(REST); left >= 0 && end < out.length; left -= 1) number(REST);
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
    for (let left = number(LOCALS); left > 0 && end < out.length; left -= 1) {
      number(LOCALS);
      copy(LOCALS, 1);
    }
    for (let open = 1; open > 0 && end < out.length; ) open += instruction();
    let length = end - start - 5;
    let place = start;
    for (; length > 127; length >>>= 7) out[place++] = (length & 127) | 128;
    out[place++] = length;
    out.copyWithin(place, start + 5, end);
    end -= start + 5 - place;
  }

  copy(SECTIONS, ends[SECTIONS] - places[SECTIONS]);
  // Where lengths do not fit, it may fill what there is before its instructions are at their end.
  while (places[INSTRUCTIONS] < ends[INSTRUCTIONS] && end < out.length) body();
  if (ends.some((end, kind) => end !== places[kind])) throw new Error("found strands that do not fit together");
  return out.subarray(0, end);
}

/** Takes strands as they arrive, and gives each block on as soon as it is there. */
function layer() {
  let waiting = new Uint8Array(0);
  return new TransformStream({
    transform(arrived, pieces) {
      const joined = new Uint8Array(waiting.length + arrived.length);
      joined.set(waiting);
      joined.set(arrived, waiting.length);
      waiting = joined;
      while (waiting.length >= HEAD) {
        const places = bounds(waiting);
        const end = places[STRANDS];
        if (waiting.length < end) break;
        pieces.enqueue(piece(waiting.subarray(0, end), places));
        waiting = waiting.subarray(end);
      }
    },
    flush() {
      if (waiting.length > 0) throw new Error("found the end within a block of strands");
    },
  });
}

/** The part of the module that is fetched here, for the browser to compile while it arrives. */
export async function laid(fetched) {
  const answer = await fetched;
  if (!answer.ok) throw new Error(`${answer.url}: ${answer.status}`);
  const headers = { "content-type": "application/wasm" };
  return new Response(answer.body.pipeThrough(layer()), { headers });
}
