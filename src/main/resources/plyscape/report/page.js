/* What all of the page's scripts share: the data block, and colours. Nothing is loaded. Lengths mm, panel Y up, depths positive down. */
(function () {
  'use strict';
  const data = JSON.parse(document.getElementById('plan-data').textContent);
  const panel = data.panel;
  const byNumber = new Map(data.plies.map((p) => [p.number, p]));
  const get = (id) => document.getElementById(id);

  /* Runs as base64 of pairs (value, length), each a little-endian base-128 number. */
  function unpack(text, size) {
    const bytes = atob(text);
    const out = new Uint16Array(size);
    let at = 0, to = 0;
    const number = () => {
      let value = 0, shift = 1, byte;
      do {
        byte = bytes.charCodeAt(at++);
        value += (byte & 127) * shift;
        shift *= 128;
      } while (byte & 128);
      return value;
    };
    while (at < bytes.length) {
      const value = number();
      const length = number();
      out.fill(value, to, to + length);
      to += length;
    }
    return out;
  }

  const map = data.cells;
  map.ply = unpack(map.plies, map.columns * map.rows);
  map.zone = unpack(map.zones, map.columns * map.rows);
  map.drawnPly = unpack(map.drawn, map.columns * map.rows);
  const indexAt = (x, y) => {
    const column = Math.floor(x / map.mm);
    const row = Math.floor((panel.height - y) / map.mm);
    return column < 0 || row < 0 || column >= map.columns || row >= map.rows ? -1 : row * map.columns + column;
  };

  /* Elevation of the ground, between the middles of coarse cells over the carved area. */
  const heights = (() => {
    const e = data.elevations, bytes = atob(e.steps), out = new Float32Array(e.columns * e.rows);
    let at = 0, steps = 0;
    for (let i = 0; i < out.length; i++) {
      let value = 0, shift = 1, byte;
      do {
        byte = bytes.charCodeAt(at++);
        value += (byte & 127) * shift;
        shift *= 128;
      } while (byte & 128);
      steps += value % 2 ? -(value + 1) / 2 : value / 2;
      out[i] = e.least + steps * e.step;
    }
    return out;
  })();
  const elevationAt = (x, y) => {
    const e = data.elevations, [west, south, east, north] = panel.carved;
    const clamp = (v, most) => Math.min(Math.max(v, 0), most);
    const u = clamp((x - west) / (east - west) * e.columns - 0.5, e.columns - 1);
    const v = clamp((north - y) / (north - south) * e.rows - 0.5, e.rows - 1);
    const c = Math.min(Math.floor(u), Math.max(e.columns - 2, 0)), r = Math.min(Math.floor(v), Math.max(e.rows - 2, 0));
    const right = Math.min(c + 1, e.columns - 1), down = Math.min(r + 1, e.rows - 1);
    const mix = (a, b, t) => a + (b - a) * t;
    return mix(mix(heights[r * e.columns + c], heights[r * e.columns + right], u - c),
      mix(heights[down * e.columns + c], heights[down * e.columns + right], u - c), v - r);
  };

  const finished = (number) => (number === 0 ? data.border.finished : byNumber.get(number).finished);
  /* Where faces follow the terrain: between the nearest coarse cells that show the same ply, by tents that widen until some do. */
  const faces = data.faces ? Uint8Array.from(atob(data.faces.depths), (c) => c.charCodeAt(0)) : null;
  const faceCell = (column, row) => {
    const { columns, rows } = data.faces;
    const i = 2 * (Math.min(Math.max(row, 0), rows - 1) * columns + Math.min(Math.max(column, 0), columns - 1));
    return (faces[i] + 256 * faces[i + 1]) / 1000;
  };
  const WIDEST = 4;
  const finishedAt = (x, y, number) => {
    const range = number > 0 && faces ? byNumber.get(number).range : null;
    if (!range) return finished(number);
    const u = x / data.faces.mm - 0.5, v = (panel.height - y) / data.faces.mm - 0.5;
    const c = Math.floor(u), r = Math.floor(v);
    for (let reach = 1; reach <= WIDEST; reach++) {
      let sum = 0, weights = 0;
      for (let row = r - reach + 1; row <= r + reach; row++) {
        for (let column = c - reach + 1; column <= c + reach; column++) {
          const depth = faceCell(column, row);
          if (depth < range[0] - 0.002 || depth > range[1] + 0.002) continue;
          const weight = (1 - Math.abs(u - column) / reach) * (1 - Math.abs(v - row) / reach) + 1e-6;
          sum += weight * depth;
          weights += weight;
        }
      }
      if (weights > 0) return sum / weights;
    }
    return finished(number);
  };
  const flat = data.plies.reduce((depths, p) => depths.concat(p.finished), [data.border.finished]);
  let sculpted = null;
  const depthOfCell = (i) => {
    if (!faces) return flat[map.ply[i]];
    if (!sculpted) {
      sculpted = Float32Array.from(map.ply, (ply, k) => finishedAt(
        (k % map.columns + 0.5) * map.mm, panel.height - (Math.floor(k / map.columns) + 0.5) * map.mm, ply));
    }
    return sculpted[i];
  };

  const fixed = (value, places) => value.toFixed(places);
  const rgb = (colour) => [1, 3, 5].map((i) => parseInt(colour.substr(i, 2), 16));
  const inkOn = (colour) => {
    const [r, g, b] = rgb(colour).map((v) => Math.pow(v / 255, 2.2));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b > 0.179 ? '#000' : '#fff';
  };

  /* Screens may be dark, paper never is: what scripts draw is drawn anew for it. */
  const dark = window.matchMedia('(prefers-color-scheme: dark)');
  const painters = [];
  let onPaper = false;
  const repaint = () => painters.forEach((paint) => paint());
  dark.addEventListener('change', repaint);
  window.addEventListener('beforeprint', () => {
    onPaper = true;
    repaint();
  });
  window.addEventListener('afterprint', () => {
    onPaper = false;
    repaint();
  });
  const isDark = () => dark.matches && !onPaper;

  window.plyscape = {
    data, panel, map, byNumber, indexAt, elevationAt, finished, finishedAt, depthOfCell, fixed, rgb, inkOn, get,
    ink: () => (isDark() ? '#ece7de' : '#26231f'),
    card: () => (isDark() ? '#262421' : '#ffffff'),
    paperTone: () => rgb(onPaper ? '#ffffff' : isDark() ? '#262421' : '#f4f1ea'),
    isOnPaper: () => onPaper,
    onPaper: (paint) => painters.push(paint),
  };
})();
