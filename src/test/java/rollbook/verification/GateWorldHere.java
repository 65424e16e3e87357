package rollbook.verification;

import java.util.Objects;
import org.springframework.beans.factory.support.BeanDefinitionRegistry;
import org.springframework.boot.convert.ApplicationConversionService;
import org.springframework.context.ApplicationContext;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import org.springframework.context.annotation.ClassPathBeanDefinitionScanner;
import org.springframework.transaction.annotation.EnableTransactionManagement;

/** Built from the classes of the loader that it was itself loaded by. */
final class GateWorldHere implements GateWorld {
    @Override
    public Explored explore(int mostStates) {
        GateProof proof = new GateProof();
        GateExploration.Result result = GateExploration.from(GateDay.states(proof), proof, mostStates);
        return new Explored(result.states(), result.depth(), result.fault());
    }

    @Override
    public GateStage model() {
        return new GateModelStage();
    }

    /** The beans of this package are made anew; all others are those of the context. */
    @Override
    public GateStage portal(ApplicationContext context) {
        AnnotationConfigApplicationContext here = new AnnotationConfigApplicationContext();
        here.setParent(context);
        here.setClassLoader(Objects.requireNonNull(GateWorldHere.class.getClassLoader()));
        here.getBeanFactory().setConversionService(ApplicationConversionService.getSharedInstance());
        here.register(Transactions.class);
        scan(here);
        here.refresh();
        return here.getAutowireCapableBeanFactory().createBean(GatePortal.class);
    }

    private static void scan(BeanDefinitionRegistry here) {
        ClassPathBeanDefinitionScanner scanner = new ClassPathBeanDefinitionScanner(here);
        scanner.getBeanDefinitionDefaults().setLazyInit(true);
        scanner.scan(GateWorldHere.class.getPackageName());
    }

    @EnableTransactionManagement(proxyTargetClass = true)
    private static final class Transactions {}
}
