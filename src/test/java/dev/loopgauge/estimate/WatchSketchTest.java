package dev.loopgauge.estimate;
import dev.loopgauge.signal.SampleRate;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
class WatchSketchTest {
  static final SampleRate RATE = new SampleRate(48000);
  static double[] prog(int kind, double sec, long seed) {
    SplittableRandom r = new SplittableRandom(seed);
    double[] x = new double[RATE.samplesIn(sec)];
    var s = kind==0?ShowSound.speech(RATE,sec,r):kind==1?ShowSound.music(RATE,sec,r):ShowSound.applause(RATE,sec,r);
    s.copyTo(0,x,0,x.length); return x;
  }
  @Test void sketch() {
    double sec = Double.parseDouble(System.getProperty("sec","60"));
    for (int kind=0;kind<3;kind++) {
      double[] p = prog(kind, sec, 5+kind);
      int n=p.length;
      double[][] ret = new double[7][n];
      SplittableRandom r = new SplittableRandom(99);
      int[] steps={1,64,-3,256};
      for (int i=0;i<n;i++) {
        double t=i/48000.0;
        double noise=1e-4*r.nextGaussian();
        int d0=595;
        ret[0][i]=0.5*(i>=d0?p[i-d0]:0)+noise;
        int d1=t<20.3?595:t<30.7?596:595; ret[1][i]=0.5*(i>=d1?p[i-d1]:0)+noise;
        int d2=t<20.3?595:t<30.7?659:595; ret[2][i]=0.5*(i>=d2?p[i-d2]:0)+noise;
        ret[3][i]=(t>25&&t<32?-.5:.5)*(i>=d0?p[i-d0]:0)+noise;
        ret[4][i]=(t>25&&t<25.02?0:1)*.5*(i>=d0?p[i-d0]:0)+noise;
        ret[5][i]=(t>25&&t<32?0:t>40?.25:1)*.5*(i>=d0?p[i-d0]:0)+noise;
        double dd=600+(t>20?(t-20)*20e-6*48000:0); int w=(int)Math.floor(dd); double f=dd-w;
        ret[6][i]=i>w+2?.5*((1-f)*p[i-w]+f*p[i-w-1])+noise:0;
      }
      WatchedSound ws = new WatchedSound(RATE,new WatchPlan(2,1,0.5),7);
      long t0=System.nanoTime();
      ws.hear(p,ret[0],ret[1],ret[2],ret[3],ret[4],ret[5],ret[6]);
      System.out.println("kind "+kind+" took "+(System.nanoTime()-t0)/1e9);
      for (int i=0;i<7;i++) {
        System.out.println(" path "+i+" unread "+ws.readings(i).stream().filter(x->x.delay().isEmpty()).count()+" of "+ws.readings(i).size()+"  "+ws.readings(i).stream().flatMap(x->x.delay().stream()).limit(3).map(x->x.point().delay().samples()+"±"+x.point().uncertaintySamples()+" "+x.levelDb()+" bands "+x.bands().size()).toList());
        ws.events(i).forEach(e->System.out.println("    "+e));
      }
    }
  }
}
