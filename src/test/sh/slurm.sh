#!/usr/bin/env bash
# Runs scripts/series.sbatch under a real Slurm: 24 small panels as an array of 6 tasks, one of them stopped and queued again, then
# gathered, and all files compared with those of one plain run.
#
#   src/test/sh/slurm.sh
#
# It needs Debian's packages slurm-wlm and munge, and installs nothing. As whoever calls it, it starts munged, slurmctld and slurmd
# with settings, keys, logs and state in a new folder under $TMPDIR, listening on free ports of this machine, and ends exactly these
# three when it is done, has failed or is interrupted. It reads and writes nothing under /etc and /var. About two minutes on two cores.
set -euo pipefail

root=$(cd -P "$(dirname "${BASH_SOURCE[0]}")/../../.." && pwd)
export PATH=$PATH:/usr/sbin:/sbin
for tool in munged slurmctld slurmd sbatch squeue scontrol; do
  command -v "$tool" >/dev/null || { echo "slurm.sh: no $tool; install Debian's packages slurm-wlm and munge" >&2; exit 2; }
done

base=$(mktemp -d "${TMPDIR:-/tmp}/plyscape-slurm.XXXXXX")
chmod 755 "$base" # munged refuses a socket in a folder that others can't enter
pids=()
stop() { # what hasn't ended after ten seconds doesn't end by itself
  kill "$1" 2>/dev/null || return 0
  for _ in $(seq 100); do kill -0 "$1" 2>/dev/null || return 0; sleep 0.1; done
  kill -KILL "$1" 2>/dev/null || true
}
end() {
  local code=$?
  trap - EXIT INT TERM
  [ -z "${SLURM_CONF:-}" ] || timeout 10 scancel --me >/dev/null 2>&1 || true
  for ((i = ${#pids[@]} - 1; i >= 0; i--)); do stop "${pids[i]}"; done
  if [ $code = 0 ]; then rm -rf "$base"; else echo "slurm.sh: failed; logs are in $base" >&2; fi
  exit $code
}
trap end EXIT
trap 'exit 130' INT
trap 'exit 143' TERM

free_port() {
  local port
  for _ in $(seq 50); do
    port=$((20000 + RANDOM % 20000))
    (exec 3<>"/dev/tcp/127.0.0.1/$port") 2>/dev/null || { echo $port; return; }
  done
  return 1
}

# --- one machine as a cluster ---
mkdir "$base/state" "$base/spool"
(umask 077 && head -c 1024 /dev/urandom >"$base/munge.key")
munged --foreground --key-file="$base/munge.key" --socket="$base/munge.socket" --pid-file="$base/munged.pid" \
  --log-file="$base/munged.log" --seed-file="$base/munge.seed" >"$base/munged.out" 2>&1 &
pids+=($!)
for _ in $(seq 50); do [ -S "$base/munge.socket" ] && break; sleep 0.1; done
[ -S "$base/munge.socket" ] || { cat "$base/munged.out" >&2; exit 1; }

host=$(hostname -s)
user=$(id -un)
export SLURM_CONF=$base/slurm.conf
cat >"$SLURM_CONF" <<CONF
ClusterName=plyscape
SlurmctldHost=$host(127.0.0.1)
SlurmctldPort=$(free_port)
SlurmdPort=$(free_port)
SlurmUser=$user
SlurmdUser=$user
AuthType=auth/munge
AuthInfo=socket=$base/munge.socket
CredType=cred/munge
StateSaveLocation=$base/state
SlurmdSpoolDir=$base/spool
SlurmctldPidFile=$base/slurmctld.pid
SlurmdPidFile=$base/slurmd.pid
SlurmctldLogFile=$base/slurmctld.log
SlurmdLogFile=$base/slurmd.log
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
SwitchType=switch/none
MpiDefault=none
JobAcctGatherType=jobacct_gather/none
AccountingStorageType=accounting_storage/none
SelectType=select/cons_tres
SelectTypeParameters=CR_Core_Memory
ReturnToService=2
MinJobAge=3600
KillWait=5
NodeName=$host NodeAddr=127.0.0.1 CPUs=$(nproc) RealMemory=8000 State=UNKNOWN
PartitionName=all Nodes=$host Default=YES MaxTime=INFINITE State=UP
CONF
slurmctld -D >"$base/slurmctld.out" 2>&1 &
pids+=($!)
slurmd -D -N "$host" >"$base/slurmd.out" 2>&1 &
pids+=($!)
for _ in $(seq 60); do
  [ "$(timeout 5 sinfo -h -o %T 2>/dev/null)" = idle ] && break
  sleep 0.5
done
[ "$(timeout 5 sinfo -h -o %T)" = idle ] || { echo "slurm.sh: the node isn't ready" >&2; exit 1; }
echo "ok    a cluster of one: $(sinfo -h -o '%n, %c processors, %T')"

# --- 24 panels of real ground ---
cd "$root"
plyscape=${PLYSCAPE:-$root/scripts/plyscape}
export PLYSCAPE=$plyscape
{
  echo 'name,terrain.centre,panel.turn'
  for i in $(seq 0 23); do
    printf 'place %02d,"%d, %d",%d\n' "$i" $((516800 + i % 6 * 800)) $((6156200 + i / 6 * 1600)) $((i * 7))
  done
} >"$base/places.csv"
jobs=("$root/samples/eildon/job.yaml" --each "$base/places.csv" --set terrain.ground_width=2000
  --width 40 --height 40 --border 3 --set minimum_area=4)
"$plyscape" plan "${jobs[@]}" -o "$base/plain" >"$base/plain.log" 2>&1
cd "$base"
array=$(sbatch --parsable --array=1-6 "$root/scripts/series.sbatch" "${jobs[@]}" -o "$base/out")
until [ -d "$base/out/place 00" ]; do sleep 0.1; done
scontrol requeue "${array}_1" # as when its node is wanted for something else
gather=$(sbatch --parsable --dependency="afterany:$array" --output="$base/gather.log" --wrap "'$plyscape' gather '$base/out'")
for _ in $(seq 900); do
  case $(squeue -h -j "$gather" -o %T 2>/dev/null) in PENDING | RUNNING | COMPLETING | CONFIGURING) sleep 1 ;; *) break ;; esac
done
scontrol show job "$array" | grep -E 'ArrayTaskId|JobState|Restarts' | tr '\n' ' ' >"$base/tasks"
grep -q 'Restarts=1' "$base/tasks" || { echo "slurm.sh: the task wasn't queued again" >&2; exit 1; }
[ "$(grep -o 'JobState=COMPLETED' "$base/tasks" | wc -l)" = 6 ] || { cat "$base/tasks" >&2; exit 1; }
echo "ok    6 tasks done, one of them in two goes: $(cat "$base"/plyscape-*_1.log | grep -c unchanged) of its panels were there already"
grep -qx '24 jobs, all there' "$base/gather.log" || { cat "$base/gather.log" >&2; exit 1; }
echo "ok    gathered: $(head -1 "$base/gather.log")"
diff -r -x 'batch*.json' -x index.html "$base/plain" "$base/out"
echo "ok    the same $(find "$base/out" -mindepth 2 -type f | wc -l) files, byte for byte, as of one plain run"

# --- a panel that fails ---
sed -i '2s/"[^"]*"/"1, 2"/' "$base/places.csv"
array=$(sbatch --parsable --wait --array=1-6 "$root/scripts/series.sbatch" "${jobs[@]}" -o "$base/out" || true)
states=$(scontrol show job "$array" | grep -oE 'JobState=[A-Z]+' | sort | uniq -c | tr -s ' \n' ' ')
[ "$states" = " 5 JobState=COMPLETED 1 JobState=FAILED " ] || { echo "slurm.sh: found$states" >&2; exit 1; }
"$plyscape" gather -q "$base/out" >"$base/gather.log" && exit 1
grep -q '^missing place 00: ' "$base/gather.log"
echo "ok    with a panel that can't be planned one task fails, once, and gather names the panel"
