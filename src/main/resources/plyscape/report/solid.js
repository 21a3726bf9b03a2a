/* The panel as a solid that turns: the view, and what moves it. Drawn with WebGL, or without where there is none. */
(function () {
  'use strict';
  const { panel, get, paperTone, solidGl, solidFlat } = window.plyscape;
  const START = { yaw: -0.45, pitch: 0.75, zoom: 1, across: 0, upward: 0 };
  const SIDES = ['south', 'south-east', 'east', 'north-east', 'north', 'north-west', 'west', 'south-west'];
  /* Half the height of the field of view over the distance, and the share of the canvas that the panel may fill. */
  const HALF_VIEW = 0.3, FILL = 0.95;
  const LOWEST = 0.12, FARTHEST = 0.5, NEAREST = 12;

  let canvas = get('solid');
  let draw = solidGl(canvas);
  if (!draw) {
    /* A canvas that was asked for WebGL may refuse to be drawn on otherwise. */
    const fresh = canvas.cloneNode(false);
    canvas.replaceWith(fresh);
    canvas = fresh;
    draw = solidFlat(canvas);
  }
  const parallel = 'cells' in canvas.dataset;
  const view = Object.assign({}, START);

  /*
   * The eye that sees the whole panel, whatever way it is turned, as large as fits: axes right, up and back (towards the eye) in
   * panel axes, the point of the picture's middle on the first two, the distance, and half the field of view each way at distance 1.
   */
  function camera(aspect) {
    const stretch = Number(get('stretch').value);
    const cy = Math.cos(view.yaw), sy = Math.sin(view.yaw), cp = Math.cos(view.pitch), sp = Math.sin(view.pitch);
    const right = [cy, sy, 0], up = [-sp * sy, sp * cy, cp], back = [cp * sy, -cp * cy, sp];
    const half = [panel.width / 2, panel.height / 2, panel.thickness / 2 * stretch];
    const corners = [];
    for (let k = 0; k < 8; k++) corners.push(half.map((v, i) => (k >> i & 1 ? v : -v)));
    const on = (axis, p) => axis[0] * p[0] + axis[1] * p[1] + axis[2] * p[2];
    let tall = HALF_VIEW, wide = HALF_VIEW * aspect;
    /* A corner is seen while |side - centre| <= (distance - back) * half view: the least distance for each pair of sides. */
    const lean = parallel ? 0 : 1;
    const least = (axis, open) => {
      const most = Math.max(...corners.map((p) => on(axis, p) + on(back, p) * open * lean));
      const other = Math.min(...corners.map((p) => on(axis, p) - on(back, p) * open * lean));
      return (most - other) / 2 / open;
    };
    const distance = Math.max(least(right, wide * FILL), least(up, tall * FILL));
    /* The point for which both margins of the picture are alike. */
    const middle = (axis) => {
      let centre = 0;
      for (let k = 0; k < 8; k++) {
        const seen = corners.map((p) => (on(axis, p) - centre) / (distance - on(back, p) * lean));
        centre += (Math.max(...seen) + Math.min(...seen)) / 2 * distance;
      }
      return centre;
    };
    wide /= view.zoom;
    tall /= view.zoom;
    const centre = [middle(right) + view.across, middle(up) + view.upward];
    return { right, up, back, centre, distance, radius: Math.hypot(...half), wide, tall, stretch };
  }

  function paint(width, height, paper) {
    canvas.width = width;
    canvas.height = height;
    draw(camera(width / height), paper);
  }
  function show() {
    const scale = Math.min(window.devicePixelRatio || 1, 3);
    const box = canvas.getBoundingClientRect();
    paint(Math.max(Math.round(box.width * scale), 2), Math.max(Math.round(box.height * scale), 2), paperTone());
    const from = SIDES[((Math.round(view.yaw / (Math.PI / 4)) % 8) + 8) % 8];
    const steep = Math.round(view.pitch * 180 / Math.PI);
    const words = (steep > 80 ? 'Seen from above' : 'Seen from the ' + from + ', ' + steep + '\u00b0 above the horizon')
      + ', heights x ' + Number(get('stretch').value) + '.';
    get('solid-words').textContent = words;
    canvas.setAttribute('aria-label', 'The finished panel as a solid. ' + words);
  }
  let asked = false;
  function ask() {
    if (asked) return;
    asked = true;
    requestAnimationFrame(() => {
      asked = false;
      show();
    });
  }
  function turnBy(yaw, pitch) {
    view.yaw += yaw;
    view.pitch = Math.min(Math.max(view.pitch + pitch, LOWEST), Math.PI / 2);
    ask();
  }
  function zoomBy(factor) {
    view.zoom = Math.min(Math.max(view.zoom * factor, FARTHEST), NEAREST);
    ask();
  }
  /* By pixels of the page: what was under the finger stays there. */
  function slideBy(dx, dy) {
    const box = canvas.getBoundingClientRect();
    const eye = camera(box.width / box.height);
    const perPixel = 2 * eye.tall * eye.distance / box.height;
    const far = Math.hypot(panel.width, panel.height) / 2;
    view.across = Math.min(Math.max(view.across - dx * perPixel, -far), far);
    view.upward = Math.min(Math.max(view.upward + dy * perPixel, -far), far);
    ask();
  }

  /* One finger or the mouse turns; two fingers, or the mouse with Shift, slide; a pinch zooms. */
  const fingers = new Map();
  canvas.addEventListener('pointerdown', (event) => {
    canvas.setPointerCapture(event.pointerId);
    fingers.set(event.pointerId, [event.clientX, event.clientY]);
  });
  canvas.addEventListener('pointermove', (event) => {
    const last = fingers.get(event.pointerId);
    if (!last) return;
    const next = [event.clientX, event.clientY];
    fingers.set(event.pointerId, next);
    const dx = next[0] - last[0], dy = next[1] - last[1];
    if (fingers.size > 1) {
      const other = [...fingers].find(([id]) => id !== event.pointerId)[1];
      const apart = (p) => Math.max(20, Math.hypot(p[0] - other[0], p[1] - other[1]));
      zoomBy(apart(next) / apart(last));
      slideBy(dx / 2, dy / 2);
    } else if (event.shiftKey) {
      slideBy(dx, dy);
    } else {
      turnBy(-dx * 0.008, dy * 0.006);
    }
  });
  for (const end of ['pointerup', 'pointercancel', 'lostpointercapture']) {
    canvas.addEventListener(end, (event) => fingers.delete(event.pointerId));
  }
  canvas.addEventListener('touchmove', (event) => {
    if (event.touches.length > 1) event.preventDefault();
  }, { passive: false });
  canvas.addEventListener('wheel', (event) => {
    if (!event.ctrlKey) return;
    event.preventDefault();
    zoomBy(Math.exp(-event.deltaY * 0.01));
  }, { passive: false });
  const reset = () => {
    Object.assign(view, START);
    ask();
  };
  const TURN = 0.1, TILT = 0.08, SLIDE = 24;
  canvas.addEventListener('keydown', (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const arrow = { ArrowLeft: [1, 0], ArrowRight: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
    if (arrow && event.shiftKey) slideBy(arrow[0] * SLIDE, arrow[1] * SLIDE);
    else if (arrow) turnBy(arrow[0] * TURN, arrow[1] * TILT);
    else if (event.key === '+' || event.key === '=') zoomBy(1.2);
    else if (event.key === '-') zoomBy(1 / 1.2);
    else if (event.key === 'Home' || event.key === '0') reset();
    else return;
    event.preventDefault();
  });
  const button = (id, act) => get(id).addEventListener('click', act);
  button('turn-left', () => turnBy(0.26, 0));
  button('turn-right', () => turnBy(-0.26, 0));
  button('tilt-up', () => turnBy(0, 0.17));
  button('tilt-down', () => turnBy(0, -0.17));
  button('nearer', () => zoomBy(1.25));
  button('farther', () => zoomBy(0.8));
  button('view-start', reset);
  get('stretch').addEventListener('input', ask);

  /* A picture of the view, larger than the screen's, on white. */
  button('solid-save', () => {
    const box = canvas.getBoundingClientRect();
    const width = 2400;
    paint(width, Math.round(width * box.height / box.width), [255, 255, 255]);
    canvas.toBlob((blob) => {
      const link = document.createElement('a');
      link.href = URL.createObjectURL(blob);
      link.download = get('solid-save').dataset.name;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 1000);
    }, 'image/png');
    show();
  });

  /* On paper: what WebGL drew last may not be what is printed, a copy is. */
  window.addEventListener('beforeprint', () => {
    paint(1800, 1000, [255, 255, 255]);
    const copy = get('solid-paper');
    copy.width = canvas.width;
    copy.height = canvas.height;
    copy.getContext('2d').drawImage(canvas, 0, 0);
    show();
  });
  window.addEventListener('resize', ask);
  window.plyscape.onPaper(show);
  canvas.addEventListener('webglcontextlost', (event) => event.preventDefault());
  canvas.addEventListener('webglcontextrestored', () => {
    draw = solidGl(canvas) || draw;
    show();
  });
  show();
  window.plyscape.solidView = view;
})();
