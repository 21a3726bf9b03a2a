/* The page's own script: reads the data block, needs nothing from anywhere. Lengths mm, panel Y up, depths positive down. */
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
  const indexAt = (x, y) => {
    const column = Math.floor(x / map.mm);
    const row = Math.floor((panel.height - y) / map.mm);
    return column < 0 || row < 0 || column >= map.columns || row >= map.rows ? -1 : row * map.columns + column;
  };
  const finished = (number) => (number === 0 ? data.border.finished : byNumber.get(number).finished);
  /* Where faces follow the terrain: bilinear between those of four coarse cells that show the same ply. */
  const faces = data.faces ? Uint8Array.from(atob(data.faces.depths), (c) => c.charCodeAt(0)) : null;
  const faceCell = (column, row) => {
    const { columns, rows } = data.faces;
    const i = 2 * (Math.min(Math.max(row, 0), rows - 1) * columns + Math.min(Math.max(column, 0), columns - 1));
    return (faces[i] + 256 * faces[i + 1]) / 1000;
  };
  const finishedAt = (x, y, number) => {
    const range = number > 0 && faces ? byNumber.get(number).range : null;
    if (!range) return finished(number);
    const u = x / data.faces.mm - 0.5, v = (panel.height - y) / data.faces.mm - 0.5;
    const c = Math.floor(u), r = Math.floor(v);
    let sum = 0, weights = 0;
    for (let k = 0; k < 4; k++) {
      const column = c + k % 2, row = r + (k >> 1), depth = faceCell(column, row);
      if (depth < range[0] - 0.002 || depth > range[1] + 0.002) continue;
      const weight = (1 - Math.abs(u - column)) * (1 - Math.abs(v - row)) + 1e-6;
      sum += weight * depth;
      weights += weight;
    }
    return weights > 0 ? sum / weights : finished(number);
  };
  const fixed = (value, places) => value.toFixed(places);
  const css = (name) => getComputedStyle(document.documentElement).getPropertyValue(name).trim();
  const rgb = (colour) => [1, 3, 5].map((i) => parseInt(colour.substr(i, 2), 16));
  const inkOn = (colour) => {
    const [r, g, b] = rgb(colour).map((v) => Math.pow(v / 255, 2.2));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b > 0.179 ? '#000' : '#fff';
  };

  /* Risk in words, and in the colours of its steps. */
  function riskText(risk) {
    if (risk === 0) return 'none (left uncut)';
    return risk < 1e-9 ? 'below 1 in 10\u2079'
      : '1 in ' + Math.max(1, Math.round(1 / risk)).toString().replace(/\B(?=(\d{3})+$)/g, ' ');
  }
  function riskColour(risk) {
    return rgb(data.risks.find((step) => risk <= step.most).colour);
  }

  window.plyscape = { data, panel, map, byNumber, indexAt, finished, finishedAt, fixed, css, rgb, inkOn, get };

  /* The top view: what lies over the picture. */
  const overlay = get('overlay');
  const on = new Map(data.plies.map((p) => [p.number, true]));
  overlay.width = map.columns;
  overlay.height = map.rows;

  /* Zones take Okabe and Ito's colours, which colour-blind readers can tell apart. */
  const palette = [[230, 159, 0], [0, 158, 115], [86, 180, 233], [0, 114, 178], [90, 90, 90], [213, 94, 0], [204, 121, 167], [240, 228, 66]];

  /* One hatch a ply, so that neighbours differ without colour. */
  function hatched(number, column, row) {
    const kind = (number - 1) % 8;
    const x = column % 14, y = row % 14;
    switch (kind) {
      case 0: return false;
      case 1: return (column + row) % 14 < 2;
      case 2: return y < 2;
      case 3: return (column - row + 14000) % 14 < 2;
      case 4: return x < 2;
      case 5: return x < 3 && y < 3;
      case 6: return x < 2 || y < 2;
      default: return (column + row) % 14 < 2 || (column - row + 14000) % 14 < 2;
    }
  }

  function drawOverlay() {
    const context = overlay.getContext('2d');
    const image = context.createImageData(map.columns, map.rows);
    const mode = document.querySelector('input[name=mode]:checked').value;
    const pattern = get('patterns').checked;
    const tones = data.zones.map((_, i) => palette[i % palette.length]);
    const inks = new Map(data.plies.map((p) => [p.number, inkOn(p.colour) === '#000' ? 0 : 255]));
    for (let i = 0; i < map.ply.length; i++) {
      const number = map.ply[i];
      let colour = null, alpha = 0;
      if (number > 0 && !on.get(number)) {
        colour = [250, 248, 244];
        alpha = 235;
      } else if (mode === 'risk') {
        colour = number === 0 ? [200, 200, 200] : riskColour(byNumber.get(number).risk);
        alpha = 225;
      } else if (mode === 'zones') {
        colour = map.zone[i] ? tones[map.zone[i] - 1] : [245, 245, 245];
        alpha = map.zone[i] ? 215 : 170;
      } else if (pattern && number > 0) {
        const column = i % map.columns;
        if (hatched(number, column, (i - column) / map.columns)) {
          const ink = inks.get(number);
          colour = [ink, ink, ink];
          alpha = 105;
        }
      }
      if (colour) {
        image.data[4 * i] = colour[0];
        image.data[4 * i + 1] = colour[1];
        image.data[4 * i + 2] = colour[2];
        image.data[4 * i + 3] = alpha;
      }
    }
    context.putImageData(image, 0, 0);
    get('labels').style.display = get('numbers').checked ? '' : 'none';
    get('risk-key').hidden = mode !== 'risk';
    get('zone-key').hidden = mode !== 'zones';
    document.querySelectorAll('#zone-key .swatch').forEach((s, i) => {
      s.style.background = 'rgb(' + tones[i].join(',') + ')';
    });
  }

  document.querySelectorAll('.layer').forEach((box) => box.addEventListener('change', () => {
    on.set(Number(box.value), box.checked);
    drawOverlay();
  }));
  document.querySelectorAll('input[name=mode], #patterns, #numbers').forEach((e) => e.addEventListener('change', drawOverlay));
  get('all-on').addEventListener('click', () => setAll(true));
  get('all-off').addEventListener('click', () => setAll(false));
  function setAll(value) {
    document.querySelectorAll('.layer').forEach((box) => {
      box.checked = value;
      on.set(Number(box.value), value);
    });
    drawOverlay();
  }

  /* Reading a point. */
  const stage = get('stage');
  const readout = get('readout');
  function panelPoint(event) {
    const box = stage.querySelector('img').getBoundingClientRect();
    return [(event.clientX - box.left) / box.width * panel.width, (1 - (event.clientY - box.top) / box.height) * panel.height];
  }
  function show(x, y) {
    const i = indexAt(x, y);
    if (i < 0) return;
    const number = map.ply[i];
    const rows = [];
    const add = (name, value) => rows.push([name, value]);
    const ply = byNumber.get(number === 0 ? 1 : number);
    add('Ply', number === 0 ? ply.name + ' (border, left uncut)' : number + ' ' + ply.name);
    add('Finished face', fixed(finishedAt(x, y, number), 3) + ' mm deep');
    if (number > 0) {
      add('Cut to', ply.target > 0 ? fixed(finishedAt(x, y, number) - ply.finished + ply.target, 3) + ' mm' : 'uncut');
      add('Clearance', fixed(ply.available, 3) + ' mm, needed ' + fixed(ply.needed, 3));
      add('Wrong colour', riskText(ply.risk));
      add('Zone', map.zone[i] ? data.zones[map.zone[i] - 1] : 'terrain');
    }
    add('Panel', 'X ' + fixed(x, 1) + '  Y ' + fixed(y, 1) + ' mm');
    const g = data.ground;
    const c = panel.carved;
    if (number > 0) {
      add('Ground', fixed(g.box[0] + (x - c[0]) / (c[2] - c[0]) * (g.box[2] - g.box[0]), 0) + ', '
        + fixed(g.box[1] + (y - c[1]) / (c[3] - c[1]) * (g.box[3] - g.box[1]), 0) + (g.crs ? ' (' + g.crs + ')' : ''));
    }
    const list = document.createElement('dl');
    rows.forEach(([name, value], k) => {
      const dt = document.createElement('dt');
      const dd = document.createElement('dd');
      dt.textContent = name;
      if (k === 0) {
        const swatch = document.createElement('span');
        swatch.className = 'swatch';
        swatch.style.background = ply.colour;
        swatch.textContent = '\u00a0';
        dd.append(swatch);
      }
      dd.append(value);
      list.append(dt, dd);
    });
    readout.replaceChildren(list);
  }
  stage.addEventListener('pointermove', (event) => show(...panelPoint(event)));
  stage.addEventListener('pointerdown', (event) => show(...panelPoint(event)));

  /* The section line and its two handles. */
  const svg = get('lines');
  const middle = (panel.carved[1] + panel.carved[3]) / 2;
  const ends = [[panel.width * 0.02, middle], [panel.width * 0.98, middle]];
  const handles = [get('handle-a'), get('handle-b')];
  const marks = [get('mark-a'), get('mark-b')];
  function drawLine() {
    handles.forEach((h, k) => {
      h.setAttribute('cx', ends[k][0]);
      h.setAttribute('cy', panel.height - ends[k][1]);
      h.setAttribute('aria-valuenow', ends[k][0].toFixed(1));
      h.setAttribute('aria-valuetext', 'X ' + ends[k][0].toFixed(1) + ', Y ' + ends[k][1].toFixed(1) + ' mm');
      marks[k].setAttribute('x', ends[k][0]);
      marks[k].setAttribute('y', panel.height - ends[k][1]);
    });
    svg.querySelectorAll('.cut').forEach((line) => {
      line.setAttribute('x1', ends[0][0]);
      line.setAttribute('y1', panel.height - ends[0][1]);
      line.setAttribute('x2', ends[1][0]);
      line.setAttribute('y2', panel.height - ends[1][1]);
    });
    drawSection();
  }
  const clamp = (v, most) => Math.min(Math.max(v, 0), most);
  function moveEnd(k, x, y) {
    const next = [clamp(x, panel.width), clamp(y, panel.height)];
    if (Math.hypot(next[0] - ends[1 - k][0], next[1] - ends[1 - k][1]) > 1) {
      ends[k] = next;
      drawLine();
    }
  }
  handles.forEach((handle, k) => {
    handle.addEventListener('pointerdown', (event) => {
      handle.setPointerCapture(event.pointerId);
      event.preventDefault();
    });
    handle.addEventListener('pointermove', (event) => {
      if (handle.hasPointerCapture(event.pointerId)) moveEnd(k, ...panelPoint(event));
    });
    handle.addEventListener('keydown', (event) => {
      const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
      if (step) {
        moveEnd(k, ends[k][0] + step[0], ends[k][1] + step[1]);
        event.preventDefault();
      }
    });
  });

  function drawSection() {
    const canvas = get('section-view');
    const scale = window.devicePixelRatio || 1;
    const box = canvas.getBoundingClientRect();
    const width = Math.max(Math.round(box.width * scale), 300);
    const height = Math.max(Math.round(box.height * scale), 150);
    canvas.width = width;
    canvas.height = height;
    const c = canvas.getContext('2d');
    const left = 46 * scale, right = 12 * scale, top = 16 * scale, bottom = 30 * scale;
    const w = width - left - right, h = height - top - bottom;
    const length = Math.hypot(ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]);
    const down = h / panel.thickness;
    const y = (depth) => top + depth * down;
    c.fillStyle = '#3a2f26';
    c.fillRect(left, top, w, h);
    data.plies.forEach((p) => {
      c.fillStyle = p.colour;
      const glue = p.number > 1 && data.glue > 0 ? Math.max(0, 1 - (data.glue * down)) : 0;
      c.fillRect(left, y(p.top) + glue, w, (p.bottom - p.top) * down - glue);
    });
    /* What is cut away becomes pale. */
    const face = [];
    for (let px = 0; px < w; px++) {
      const t = (px + 0.5) / w;
      const px0 = ends[0][0] + t * (ends[1][0] - ends[0][0]), py0 = ends[0][1] + t * (ends[1][1] - ends[0][1]);
      const i = indexAt(px0, py0);
      face.push(finishedAt(px0, py0, i < 0 ? 0 : map.ply[i]));
    }
    c.fillStyle = css('--card');
    c.globalAlpha = 0.88;
    let from = 0;
    for (let px = 1; px <= face.length; px++) {
      if (px === face.length || face[px] !== face[from]) {
        c.fillRect(left + from, top, px - from, face[from] * down);
        from = px;
      }
    }
    c.globalAlpha = 1;
    c.strokeStyle = css('--ink');
    c.lineWidth = 1.6 * scale;
    c.beginPath();
    face.forEach((depth, px) => c[px ? 'lineTo' : 'moveTo'](left + px, y(depth)));
    c.stroke();
    c.fillStyle = css('--ink');
    c.font = 12 * scale + 'px system-ui, sans-serif';
    c.textAlign = 'right';
    c.textBaseline = 'middle';
    const step = panel.thickness > 12 ? 2 : panel.thickness > 4 ? 1 : 0.5;
    for (let d = 0; d <= panel.thickness + 1e-9; d += step) {
      c.fillText(fixed(d, step < 1 ? 1 : 0), left - 8 * scale, y(d));
    }
    c.textBaseline = 'alphabetic';
    c.textAlign = 'left';
    c.fillText('A', left, height - 10 * scale);
    c.textAlign = 'center';
    const heights = 'heights x ' + fixed(down / (w / length), 1);
    c.fillText(w > 420 * scale ? fixed(length, 1) + ' mm from A to B, depths in mm, ' + heights : fixed(length, 1) + ' mm, ' + heights, left + w / 2, height - 10 * scale);
    c.textAlign = 'right';
    c.fillText('B', left + w, height - 10 * scale);
    const crossed = [];
    face.forEach((depth) => {
      const p = data.plies.find((q) => depth >= q.top && depth <= q.bottom);
      if (p && crossed[crossed.length - 1] !== p.name) crossed.push(p.name);
    });
    canvas.setAttribute('aria-label', 'Section from A to B, crossing ' + crossed.join(', '));
  }

  let waiting = false;
  window.addEventListener('resize', () => {
    if (!waiting) {
      waiting = true;
      requestAnimationFrame(() => {
        waiting = false;
        drawSection();
      });
    }
  });
  window.matchMedia('(prefers-color-scheme: dark)').addEventListener('change', drawSection);
  drawOverlay();
  drawLine();
  show((panel.carved[0] + panel.carved[2]) / 2, middle);
})();
