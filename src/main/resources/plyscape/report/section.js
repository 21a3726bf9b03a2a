/* The section along a line whose ends the reader drags. */
(function () {
  'use strict';
  const { data, panel, map, indexAt, finishedAt, fixed, get, ink, card, isOnPaper, onPaper, panelPoint } = window.plyscape;
  const svg = get('lines');
  const middle = (panel.carved[1] + panel.carved[3]) / 2;
  const ends = [[panel.width * 0.02, middle], [panel.width * 0.98, middle]];
  const handles = [get('handle-a'), get('handle-b')];
  const dots = [get('dot-a'), get('dot-b')];
  const marks = [get('mark-a'), get('mark-b')];
  /* What a finger needs on any screen, in pixels of the page. */
  const GRIP_PX = 22, DOT_PX = 11;
  /* 184 x 42 mm, as print.css has it, at 96 pixels an inch. */
  const PAPER = { width: 695, height: 159 };
  function sizeHandles() {
    const mm = panel.width / Math.max(svg.getBoundingClientRect().width, 1);
    handles.forEach((h) => h.setAttribute('r', GRIP_PX * mm));
    dots.forEach((d) => d.setAttribute('r', DOT_PX * mm));
    marks.forEach((m) => m.setAttribute('font-size', 12 * mm));
    svg.querySelector('.cut.back').setAttribute('stroke-width', 3.5 * mm);
    svg.querySelector('.cut.front').setAttribute('stroke-width', 2 * mm);
    svg.querySelector('.cut.front').setAttribute('stroke-dasharray', 7 * mm + ' ' + 4 * mm);
    dots.forEach((d) => d.setAttribute('stroke-width', 1.6 * mm));
  }
  function drawLine() {
    handles.forEach((h, k) => {
      h.setAttribute('cx', ends[k][0]);
      h.setAttribute('cy', panel.height - ends[k][1]);
      h.setAttribute('aria-valuenow', ends[k][0].toFixed(1));
      h.setAttribute('aria-valuetext', 'X ' + ends[k][0].toFixed(1) + ', Y ' + ends[k][1].toFixed(1) + ' mm');
      dots[k].setAttribute('cx', ends[k][0]);
      dots[k].setAttribute('cy', panel.height - ends[k][1]);
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
  /* The end that a finger or the mouse holds, wherever it moves. */
  let held = null;
  window.addEventListener('pointermove', (event) => {
    if (held && held.pointer === event.pointerId) moveEnd(held.k, ...panelPoint(event));
  });
  for (const end of ['pointerup', 'pointercancel']) {
    window.addEventListener(end, (event) => {
      if (held && held.pointer === event.pointerId) held = null;
    });
  }
  handles.forEach((handle, k) => {
    handle.addEventListener('pointerdown', (event) => {
      held = { k, pointer: event.pointerId };
      event.preventDefault();
      handle.focus();
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
    const scale = isOnPaper() ? 3 : window.devicePixelRatio || 1;
    const box = isOnPaper() ? PAPER : canvas.getBoundingClientRect();
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
    c.fillStyle = card();
    c.globalAlpha = 0.88;
    let from = 0;
    for (let px = 1; px <= face.length; px++) {
      if (px === face.length || face[px] !== face[from]) {
        c.fillRect(left + from, top, px - from, face[from] * down);
        from = px;
      }
    }
    c.globalAlpha = 1;
    c.strokeStyle = ink();
    c.lineWidth = 1.6 * scale;
    c.beginPath();
    face.forEach((depth, px) => c[px ? 'lineTo' : 'moveTo'](left + px, y(depth)));
    c.stroke();
    c.fillStyle = ink();
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
        sizeHandles();
        drawSection();
      });
    }
  });
  onPaper(drawSection);
  sizeHandles();
  drawLine();
})();
