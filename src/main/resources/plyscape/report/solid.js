/* The panel as a solid that turns: plain WebGL 1. Colour comes from the depth alone, so walls show the plies they cut through. */
(function () {
  'use strict';
  const { data, panel, map, finished, finishedAt, rgb, get } = window.plyscape;
  const canvas = get('solid');
  const gl = canvas.getContext('webgl', { antialias: true, alpha: false, preserveDrawingBuffer: true });
  if (!gl) {
    get('solid-note').textContent = 'This browser can\u2019t draw the solid view (no WebGL). Everything else on the page works without it.';
    canvas.hidden = true;
    return;
  }

  /* Mesh: level faces as runs along rows, walls between cells of different depth as runs along the edge. */
  const corners = [];
  const quad = (a, b, c, d, n) => {
    for (const p of [a, b, c, a, c, d]) corners.push(p[0], p[1], p[2], n[0], n[1], n[2]);
  };
  const { columns, rows, mm } = map;
  const X = (column) => Math.min(column * mm, panel.width);
  const Y = (row) => Math.max(panel.height - row * mm, 0);
  /* Faces lap over their neighbours a little: corners of one on the edge of another would leave pinholes. */
  const lap = mm * 0.06;
  const depths = [];
  for (let n = 0; n <= data.plies.length; n++) depths.push(finished(n));
  /* Sculpted faces in steps of 0.04 mm, which the eye can't tell from a slope here and the mesh can carry. */
  const depthOf = new Float32Array(columns * rows);
  for (let i = 0; i < depthOf.length; i++) {
    const number = map.ply[i];
    depthOf[i] = data.faces && number > 0 && data.plies[number - 1].range
      ? Math.round(finishedAt((i % columns + 0.5) * mm, panel.height - (Math.floor(i / columns) + 0.5) * mm, number) * 25) / 25
      : depths[number];
  }
  const at = (column, row) =>
    column < 0 || row < 0 || column >= columns || row >= rows ? panel.thickness : depthOf[row * columns + column];
  for (let r = 0; r < rows; r++) {
    for (let c = 0, from = 0; c < columns; c++) {
      if (c + 1 === columns || at(c + 1, r) !== at(from, r)) {
        const z = at(from, r);
        const w = X(from) - lap, e = X(c + 1) + lap, s = Y(r + 1) - lap, n = Y(r) + lap;
        quad([w, s, z], [e, s, z], [e, n, z], [w, n, z], [0, 0, 1]);
        from = c + 1;
      }
    }
  }
  for (let c = 0; c <= columns; c++) {
    for (let r = 0, from = 0; r < rows; r++) {
      const a = at(c - 1, from), b = at(c, from);
      if (r + 1 === rows || at(c - 1, r + 1) !== a || at(c, r + 1) !== b) {
        if (a !== b) quad([X(c), Y(from), a], [X(c), Y(from), b], [X(c), Y(r + 1), b], [X(c), Y(r + 1), a], [a < b ? 1 : -1, 0, 0]);
        from = r + 1;
      }
    }
  }
  for (let r = 0; r <= rows; r++) {
    for (let c = 0, from = 0; c < columns; c++) {
      const a = at(from, r - 1), b = at(from, r);
      if (c + 1 === columns || at(c + 1, r - 1) !== a || at(c + 1, r) !== b) {
        if (a !== b) quad([X(from), Y(r), a], [X(from), Y(r), b], [X(c + 1), Y(r), b], [X(c + 1), Y(r), a], [0, a < b ? -1 : 1, 0]);
        from = c + 1;
      }
    }
  }
  const count = corners.length / 6;

  const vertex = `
    attribute vec3 place; attribute vec3 normal; uniform mat4 turn; uniform vec3 middle; uniform float stretch;
    varying float depth; varying vec3 facing;
    void main() {
      depth = place.z; facing = normal;
      gl_Position = turn * vec4(place.x - middle.x, place.y - middle.y, (middle.z - place.z) * stretch, 1.0);
    }`;
  const fragment = `
    precision mediump float;
    varying float depth; varying vec3 facing; uniform sampler2D layers; uniform float thickness;
    void main() {
      vec3 colour = texture2D(layers, vec2(clamp(depth / thickness, 0.0005, 0.9995), 0.5)).rgb;
      float light = 0.5 + 0.5 * max(dot(normalize(facing), vec3(-0.45, 0.45, 0.77)), 0.0) / 0.77;
      gl_FragColor = vec4(colour * min(light, 1.1), 1.0);
    }`;
  function shader(type, text) {
    const s = gl.createShader(type);
    gl.shaderSource(s, text);
    gl.compileShader(s);
    if (!gl.getShaderParameter(s, gl.COMPILE_STATUS)) throw new Error(gl.getShaderInfoLog(s));
    return s;
  }
  const program = gl.createProgram();
  gl.attachShader(program, shader(gl.VERTEX_SHADER, vertex));
  gl.attachShader(program, shader(gl.FRAGMENT_SHADER, fragment));
  gl.linkProgram(program);
  gl.useProgram(program);
  gl.bindBuffer(gl.ARRAY_BUFFER, gl.createBuffer());
  gl.bufferData(gl.ARRAY_BUFFER, new Float32Array(corners), gl.STATIC_DRAW);
  corners.length = 0;
  [['place', 0], ['normal', 12]].forEach(([name, offset]) => {
    const where = gl.getAttribLocation(program, name);
    gl.enableVertexAttribArray(where);
    gl.vertexAttribPointer(where, 3, gl.FLOAT, false, 24, offset);
  });
  const uniform = (name) => gl.getUniformLocation(program, name);

  /* Depth to colour, glue lines dark. */
  const steps = 2048;
  const strip = new Uint8Array(steps * 4);
  for (let i = 0; i < steps; i++) {
    const depth = (i + 0.5) / steps * panel.thickness;
    const ply = data.plies.find((p) => depth >= p.top && depth < p.bottom);
    const colour = ply ? rgb(ply.colour) : [58, 47, 38];
    strip.set([...colour, 255], 4 * i);
  }
  gl.bindTexture(gl.TEXTURE_2D, gl.createTexture());
  gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA, steps, 1, 0, gl.RGBA, gl.UNSIGNED_BYTE, strip);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.NEAREST);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.NEAREST);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE);
  gl.enable(gl.DEPTH_TEST);

  /* View: yaw about the vertical, pitch down from level, distance in panel sizes. */
  const view = { yaw: -0.45, pitch: 0.85, far: 1.3 };
  const size = Math.hypot(panel.width, panel.height);
  function draw() {
    const scale = window.devicePixelRatio || 1;
    const box = canvas.getBoundingClientRect();
    canvas.width = Math.max(Math.round(box.width * scale), 2);
    canvas.height = Math.max(Math.round(box.height * scale), 2);
    gl.viewport(0, 0, canvas.width, canvas.height);
    const paper = rgb(window.matchMedia('(prefers-color-scheme: dark)').matches ? '#262421' : '#efece5');
    gl.clearColor(paper[0] / 255, paper[1] / 255, paper[2] / 255, 1);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    const cy = Math.cos(view.yaw), sy = Math.sin(view.yaw), cp = Math.cos(view.pitch), sp = Math.sin(view.pitch);
    /* Eye axes in panel axes: right, up, towards the eye. */
    const right = [cy, sy, 0], up = [-sp * sy, sp * cy, cp], back = [cp * sy, -cp * cy, sp];
    const distance = size * view.far, near = size * 0.05, far = size * 6;
    const f = 1 / Math.tan(0.32), aspect = canvas.width / canvas.height;
    const k = (far + near) / (near - far), m = 2 * far * near / (near - far);
    const turn = new Float32Array(16);
    for (let i = 0; i < 3; i++) {
      turn[4 * i] = right[i] * f / Math.max(aspect, 1);
      turn[4 * i + 1] = up[i] * f * Math.min(aspect, 1);
      turn[4 * i + 2] = back[i] * k;
      turn[4 * i + 3] = -back[i];
    }
    turn[14] = -distance * k + m;
    turn[15] = distance;
    gl.uniformMatrix4fv(uniform('turn'), false, turn);
    gl.uniform3f(uniform('middle'), panel.width / 2, panel.height / 2, panel.thickness / 2);
    gl.uniform1f(uniform('stretch'), Number(get('stretch').value));
    gl.uniform1f(uniform('thickness'), panel.thickness);
    gl.drawArrays(gl.TRIANGLES, 0, count);
    canvas.dataset.triangles = String(count / 3);
  }
  let asked = false;
  function ask() {
    if (!asked) {
      asked = true;
      requestAnimationFrame(() => {
        asked = false;
        draw();
      });
    }
  }
  function turnBy(yaw, pitch) {
    view.yaw += yaw;
    view.pitch = Math.min(Math.max(view.pitch + pitch, 0.12), Math.PI / 2);
    ask();
  }
  function zoomBy(factor) {
    view.far = Math.min(Math.max(view.far * factor, 0.35), 4);
    ask();
  }
  canvas.addEventListener('pointerdown', (event) => canvas.setPointerCapture(event.pointerId));
  canvas.addEventListener('pointermove', (event) => {
    if (canvas.hasPointerCapture(event.pointerId)) turnBy(-event.movementX * 0.008, event.movementY * 0.006);
  });
  canvas.addEventListener('keydown', (event) => {
    const keys = { ArrowLeft: [0.1, 0], ArrowRight: [-0.1, 0], ArrowUp: [0, 0.08], ArrowDown: [0, -0.08] };
    if (keys[event.key]) turnBy(...keys[event.key]);
    else if (event.key === '+') zoomBy(0.85);
    else if (event.key === '-') zoomBy(1 / 0.85);
    else return;
    event.preventDefault();
  });
  get('nearer').addEventListener('click', () => zoomBy(0.8));
  get('farther').addEventListener('click', () => zoomBy(1.25));
  get('turn-left').addEventListener('click', () => turnBy(0.26, 0));
  get('turn-right').addEventListener('click', () => turnBy(-0.26, 0));
  get('stretch').addEventListener('input', ask);
  window.addEventListener('resize', ask);
  window.matchMedia('(prefers-color-scheme: dark)').addEventListener('change', ask);
  draw();
})();
