import sys,csv,collections
rows=[r for r in csv.reader(open(sys.argv[1]))]
for dia in ('6.0','3.0','1.5'):
    step={'6.0':2.7,'3.0':1.35,'1.5':.6}[dia]
    runs=[];cur=None
    for i,r in enumerate(rows):
        if r[0]!=dia: continue
        k=r[1]; ln=float(r[8]); fr=float(r[10]); s=float(r[11]); lev=r[4]==r[7]
        air = k!='R' and lev and fr<1e-3*ln*step
        if air:
            if cur is None: cur=[i,0,0,0]
            cur[1]+=ln;cur[2]+=s;cur[3]+=1
        else:
            if cur: runs.append(cur)
            cur=None
    h=collections.OrderedDict()
    for b in (0.5,1,2,3,4,5,7,10,15,20,30,1e9):
        h[b]=[0,0,0]
    for c in runs:
        for b in h:
            if c[1]<b: h[b][0]+=1;h[b][1]+=c[1];h[b][2]+=c[2];break
    print(dia,len(runs))
    for b,v in h.items(): print('   <%g: n %d  %.0f mm  %.1f s'%(b,*v))
