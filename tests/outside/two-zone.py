"""Two zones, burnt gas in chemical equilibrium, by Cantera 3.2.0 with its own NASA data. Reads states, prints peak bar, deg, end gas K, integral."""
import sys, json, math
import cantera as ct
names=['N2','O2','CO2','H2O','CO','H2','OH','H','O','NO','C8H18,isooctane','C7H8,toluene']
names_in={s.name:s for s in ct.Species.list_from_file('nasa_gas.yaml')}
tol=[n for n in names_in if 'C7H8' in n]
names=[n for n in names if n in names_in]
if not any('C7H8' in n for n in names): names+=tol[:1]
T=[n for n in names if 'C7H8' in n][0]
def sol(): 
    return ct.Solution(thermo='ideal-gas',species=[names_in[n] for n in names])
def pol(c,angle):
    a=math.radians(angle);r=c['stroke']/2;l=c['rod']
    A=math.pi/4*c['bore']**2; Vc=A*c['stroke']/(c['ratio']-1)
    return Vc+A*(r+l-r*math.cos(a)-math.sqrt(l*l-(r*math.sin(a))**2))
def run(s):
    c=s['cylinder'];u=sol();b=sol()
    fuel={'C8H18,isooctane':.6,T:.4}
    lam=s['lambda']
    u.set_equivalence_ratio(1/lam,fuel,{'O2':1,'N2':3.773})
    fresh=u.mass_fraction_dict()
    # residual: the same burnt, cold: equilibrium at 1700 K
    b.TPY=1700,3e5,fresh; b.equilibrate('TP'); res=b.mass_fraction_dict()
    Y={k:.94*fresh.get(k,0)+.06*res.get(k,0) for k in set(fresh)|set(res)}
    # a kg of unburnt lets so much heat stay back: 3 % of what burns
    T1=s['temperature'];shut=s['shut']
    V=pol(c,shut); u.TPY=T1,1e5,Y; Ru=8314.462618/u.mean_molecular_weight
    m=s['mass']; p=m*Ru*T1/V
    u.TP=T1,p
    mixH=u.enthalpy_mass
    # heat let go: full burn at 298.15 K
    u.TPY=298.15,p,Y; h0=u.enthalpy_mass; b.TPY=298.15,p,Y; b.TP=1700,p; b.equilibrate('TP'); b.TP=298.15,p; q=h0-b.enthalpy_mass
    kept=.03*q
    u.TPY=T1,p,Y; s0=u.entropy_mass
    core=ct.Solution(thermo='ideal-gas',species=[names_in[n] for n in names]);core.TPY=T1,p,Y
    hb=None;mb=0.;hu=u.enthalpy_mass;Tu=T1;vu=1/u.density;Tb=0;vb=0
    A=math.pi/4*c['bore']**2;sp=2*c['stroke']*s['speed']/60
    d=.1;ang=shut;V1=V;p1=p;peak=(p,ang);integral=0;lit=None;tau0=None;Tpk=None;W=0
    start,dur=s['burn']['start'],s['burn']['duration']
    x=lambda a:0 if a<=start else 1-math.exp(-5*min(1.5,(a-start)/dur)**3)
    n=int(round((120-shut)/d)); dt=d/(6*s['speed'])
    def tau(p,T): return .01768*(s['ron']/100)**3.402*(p/101325)**-1.7*math.exp(3800/T)
    out={}
    Tc=T1
    for i in range(n):
        a2=ang+d;V2=pol(c,a2);Tm=p*V/(m*Ru)
        if lit is None and ang>=start-1e-9: lit=(p,V)
        over=0 if lit is None else max(0,p-lit[0]*(lit[1]/V)**1.3)
        w=2.28*sp+3.24e-3*(A*c['stroke']*T1/(p1*V1))*over
        film=3.26*c['bore']**-.2*(p/1000)**.8*Tm**-.55*w**.8*(2*A+4*V/c['bore'])
        Q=film*(Tm-450)*dt
        mu=m*(1-x(ang)) if False else m-mb
        Vu=mu*vu
        Qu=film*(Vu/V)*(Tu-450)*dt if mb>0 else Q
        dm=m*(x(a2)-x(ang))
        if dm>0:
            if mb==0:
                hb=hu-kept; b.TPY=2300,p,Y; b.equilibrate('TP')
            else: hb=(hb*mb+dm*(hu-kept))/(mb+dm)
            mb+=dm
        mu=m-mb
        Qb=Q-Qu
        # find p2
        def vol(p2):
            nonlocal hu2,hb2
            hu2=hu+vu*(p2-p)-(Qu/mu if mu>1e-9*m else 0)
            u.HP=hu2,p2
            v=mu/u.density
            if mb>0:
                vbm=vb if vb else (1/b.density)
                hb2=hb+(vb if vb else 0)*(p2-p)-Qb/mb
                b.HP=hb2,p2
                b.equilibrate('HP',rtol=1e-7)
                v+=mb/b.density
            return v
        hu2=hb2=0
        pa=p; pb=p*(V/V2)**1.3+ (dm/m*q*.2*m/V2)
        fa=vol(pa)-V2; fb=vol(pb)-V2
        for _ in range(12):
            pc=pb-fb*(pb-pa)/(fb-fa); pa,fa=pb,fb; pb=pc; fb=vol(pb)-V2
            if abs(fb)<1e-9*V2: break
        hu,hb=hu2,hb2
        W+=(p+pb)/2*(V2-V)
        pold,Told=p,Tc
        p=pb;V=V2;Tu=u.T;vu=1/u.density
        if mb>0: vb=1/b.density;Tb=b.T
        core.SP=s0,p;Tc=core.T
        if x(a2)<.9: integral+=dt*(1/tau(pold,Told)+1/tau(p,Tc))/2; out['end']=Tc
        if p>peak[0]: peak=(p,a2,Tc,Tb)
        ang=a2
    return {'peak':peak[0]/1e5,'angle':peak[1],'endGasAtPeak':peak[2],'burntAtPeak':peak[3],'integral':integral,'work':W,'p1':p1}
for line in sys.stdin:
    s=json.loads(line); r=run(s); print(json.dumps({**r,'name':s['name'],'mine':s['mine']}),flush=True)
