/*
 * The finished panel's surface as triangles, from the outlines of its regions: a face a region, a wall a pair of neighbours.
 * plyscape.solidMesh() gives { vertices, count }: six numbers a vertex, x y depth in mm and a normal. Faces have (a, b, 1) with
 * the fall a, b of the face (0, 0 for a terrace), walls (a, b, 0) level and of unit length, so that heights can be stretched later.
 * Corners run counter-clockwise seen from outside the wood.
 */
(function () {
  'use strict';
  const { data, panel, finished, finishedAt, byNumber } = window.plyscape;

  /* Rings of every ply on the grid: shells counter-clockwise, holes clockwise, so that the region lies to the left. */
  function unpackOutlines() {
    const regions = [];
    data.outlines.plies.forEach((ply, k) => {
      const bytes = atob(data.outlines.rings[k]);
      let at = 0, x = 0, y = 0;
      const number = () => {
        let value = 0, shift = 1, byte;
        do {
          byte = bytes.charCodeAt(at++);
          value += (byte & 127) * shift;
          shift *= 128;
        } while (byte & 128);
        return value;
      };
      const step = () => {
        const n = number();
        return n % 2 ? -(n + 1) / 2 : n / 2;
      };
      while (at < bytes.length) {
        const rings = [];
        for (let left = number(), first = true; left > 0; left--, first = false) {
          const ring = [];
          for (let corners = number(); corners > 0; corners--) {
            x += step();
            y += step();
            const last = ring[ring.length - 1];
            if (!last || last[0] !== x || last[1] !== y) ring.push([x, y]);
          }
          while (ring.length > 1 && ring[0][0] === ring[ring.length - 1][0] && ring[0][1] === ring[ring.length - 1][1]) ring.pop();
          if (ring.length > 2) {
            if (area(ring) > 0 !== first) ring.reverse();
            rings.push(ring);
          } else if (first) {
            rings.push([]);
          }
        }
        if (rings[0].length) regions.push({ ply, rings });
      }
    });
    return regions;
  }
  function area(ring) {
    let sum = 0;
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length];
      sum += p[0] * q[1] - q[0] * p[1];
    });
    return sum / 2;
  }

  /* A convex piece cut at the lines of a square lattice, so that a sculpted face can bend at them. */
  function latticePieces(piece, cell) {
    const cut = (polygon, axis) => {
      const low = Math.min(...polygon.map((p) => p[axis])), high = Math.max(...polygon.map((p) => p[axis]));
      const pieces = [];
      let rest = polygon;
      for (let line = (Math.floor(low / cell + 1e-9) + 1) * cell; line < high - 1e-9 && rest.length > 2; line += cell) {
        pieces.push(half(rest, axis, line, 1));
        rest = half(rest, axis, line, -1);
      }
      pieces.push(rest);
      return pieces.filter((p) => p.length > 2);
    };
    return cut(piece, 0).flatMap((strip) => cut(strip, 1));
  }
  function half(polygon, axis, line, side) {
    const out = [];
    polygon.forEach((p, i) => {
      const q = polygon[(i + 1) % polygon.length];
      const a = (line - p[axis]) * side, b = (line - q[axis]) * side;
      if (a >= 0) out.push(p);
      if (a > 0 && b < 0 || a < 0 && b > 0) {
        const t = a / (a - b);
        const r = [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])];
        r[axis] = line;
        out.push(r);
      }
    });
    return out;
  }
  /* Places along an edge where it crosses the lattice, its ends included. */
  function latticeStops(a, b, cell) {
    const stops = [0, 1];
    for (const axis of [0, 1]) {
      const low = Math.min(a[axis], b[axis]), high = Math.max(a[axis], b[axis]);
      for (let line = (Math.floor(low / cell + 1e-9) + 1) * cell; line < high - 1e-9; line += cell) {
        stops.push((line - a[axis]) / (b[axis] - a[axis]));
      }
    }
    return stops.sort((s, t) => s - t);
  }

  window.plyscape.solidMesh = function () {
    const unit = data.outlines.mm;
    const sculpted = (ply) => ply > 0 && data.faces && byNumber.get(ply).range;
    const cell = data.faces ? data.faces.mm * 1.5 : 0;
    let out = new Float32Array(1 << 16), used = 0;
    const vertex = (x, y, depth, a, b, c) => {
      if (used + 6 > out.length) {
        const more = new Float32Array(2 * out.length);
        more.set(out);
        out = more;
      }
      out[used++] = x;
      out[used++] = y;
      out[used++] = depth;
      out[used++] = a;
      out[used++] = b;
      out[used++] = c;
    };
    /* Depth and fall of a face, each place looked up once. */
    const known = new Map();
    const faceAt = (ply, p) => {
      const key = ply + ' ' + p[0] + ' ' + p[1];
      let f = known.get(key);
      if (!f) {
        const h = data.faces.mm;
        const d = (x, y) => finishedAt(x, y, ply);
        f = [d(p[0], p[1]), (d(p[0] + h, p[1]) - d(p[0] - h, p[1])) / (2 * h), (d(p[0], p[1] + h) - d(p[0], p[1] - h)) / (2 * h)];
        known.set(key, f);
      }
      return f;
    };
    const depthAt = (ply, p) => (ply === -1 ? panel.thickness : sculpted(ply) ? faceAt(ply, p)[0] : finished(ply));
    function face(ply, corners) {
      if (!sculpted(ply)) {
        corners.forEach((p) => vertex(p[0], p[1], finished(ply), 0, 0, 1));
        return;
      }
      for (const piece of latticePieces(corners, cell)) {
        for (let i = 1; i + 1 < piece.length; i++) {
          for (const p of [piece[0], piece[i], piece[i + 1]]) vertex(p[0], p[1], ...faceAt(ply, p), 1);
        }
      }
    }
    function wall(upper, lower, a, b, na, nb) {
      const stops = sculpted(upper) || sculpted(lower) ? latticeStops(a, b, cell) : [0, 1];
      const place = (t) => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
      for (let i = 0; i + 1 < stops.length; i++) {
        const p = place(stops[i]), q = place(stops[i + 1]);
        const p1 = depthAt(upper, p), p2 = depthAt(lower, p), q1 = depthAt(upper, q), q2 = depthAt(lower, q);
        for (const [w, depth, n] of [[p, p1, na], [p, p2, na], [q, q2, nb], [p, p1, na], [q, q2, nb], [q, q1, nb]]) {
          vertex(w[0], w[1], depth, n[0], n[1], 0);
        }
      }
    }

    const regions = unpackOutlines();
    const scaled = (p) => [p[0] * unit, p[1] * unit];
    /* Whose is the region to the left of an edge? The edge the other way round then names the neighbour. */
    const ids = new Map();
    const id = (p) => {
      const spot = p[0] * 1048576 + p[1];
      if (!ids.has(spot)) ids.set(spot, ids.size);
      return ids.get(spot);
    };
    const edge = (p, q) => id(p) * 4194304 + id(q);
    const edges = new Map();
    for (const { ply, rings } of regions) {
      for (const ring of rings) ring.forEach((p, i) => edges.set(edge(p, ring[(i + 1) % ring.length]), ply));
    }
    const [west, south, east, north] = panel.carved.map((v) => Math.round(v / unit));
    const wide = Math.round(panel.width / unit), high = Math.round(panel.height / unit);
    const along = (p, q, x1, y1, x2, y2) => p[0] <= x1 && q[0] <= x1 || p[1] <= y1 && q[1] <= y1
      || p[0] >= x2 && q[0] >= x2 || p[1] >= y2 && q[1] >= y2;
    /* Beyond an edge: a ply, 0 for the border, -1 for nothing, null where rounding lost the neighbour. */
    const beyond = (p, q) => {
      const ply = edges.get(edge(q, p));
      return ply !== undefined ? ply : along(p, q, 0, 0, wide, high) ? -1 : along(p, q, west, south, east, north) ? 0 : null;
    };
    for (const { ply, rings } of regions) {
      const flat = [], holes = [];
      rings.forEach((ring, k) => {
        if (k > 0) holes.push(flat.length / 2);
        ring.forEach((p) => flat.push(p[0], p[1]));
      });
      const corner = (i) => scaled([flat[2 * i], flat[2 * i + 1]]);
      const triangles = window.earcut.default(flat, holes);
      for (let i = 0; i < triangles.length; i += 3) {
        const three = [corner(triangles[i]), corner(triangles[i + 1]), corner(triangles[i + 2])];
        face(ply, area(three) < 0 ? three.reverse() : three);
      }
      for (const ring of rings) walls(ply, ring);
    }
    function walls(ply, ring) {
      const n = ring.length;
      const normals = ring.map((p, i) => {
        const q = ring[(i + 1) % n], length = Math.hypot(q[0] - p[0], q[1] - p[1]);
        return [(q[1] - p[1]) / length, (p[0] - q[0]) / length];
      });
      /* Gentle bends are lit as curves, corners stay corners. */
      const bend = (i, j) => {
        const s = normals[i], t = normals[j];
        if (s[0] * t[0] + s[1] * t[1] < 0.7) return s;
        const length = Math.hypot(s[0] + t[0], s[1] + t[1]);
        return [(s[0] + t[0]) / length, (s[1] + t[1]) / length];
      };
      ring.forEach((p, i) => {
        const q = ring[(i + 1) % n];
        const other = beyond(p, q);
        const a = scaled(p), b = scaled(q), na = bend(i, (i + n - 1) % n), nb = bend(i, (i + 1) % n);
        if (other === 0) {
          wall(0, ply, b, a, [-nb[0], -nb[1]], [-na[0], -na[1]]);
        } else if (other === -1 || other > ply) {
          wall(ply, other, a, b, na, nb);
        }
      });
    }
    border();

    /* The border around the carved area, with the panel's own sides. */
    function border() {
      const W = wide, H = high;
      for (const [x1, y1, x2, y2] of [[0, 0, west, H], [east, 0, W, H], [west, 0, east, south], [west, north, east, H]]) {
        if (x2 <= x1 || y2 <= y1) continue;
        const c = [[x1, y1], [x2, y1], [x2, y2], [x1, y2]];
        face(0, [scaled(c[0]), scaled(c[1]), scaled(c[2])]);
        face(0, [scaled(c[0]), scaled(c[2]), scaled(c[3])]);
        c.forEach((p, i) => {
          const q = c[(i + 1) % 4];
          const normal = [[0, -1], [1, 0], [0, 1], [-1, 0]][i];
          if (along(p, q, 0, 0, W, H)) wall(0, -1, scaled(p), scaled(q), normal, normal);
        });
      }
    }
    return { vertices: out.subarray(0, used), count: used / 6 };
  };
})();
